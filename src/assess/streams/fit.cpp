// SPDX-License-Identifier: MIT
#include "assess/streams/fit.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::streams {
namespace {

std::string litres(double millilitres) {
    return significant(millilitres / 1000, 3) + " L";
}

} // namespace

ContainerFit fit_container(const Container& container, std::vector<StreamVolume> streams,
                           const ClassSize& size, const LocalRules& local, double present) {
    ContainerFit fit;
    fit.container = &container;
    fit.streams = std::move(streams);
    for (const StreamVolume& stream : fit.streams)
        fit.per_pot += stream.millilitres;
    const double allowance = size.allowance.value_or(local.allowance.value);
    fit.volume = size.pots * fit.per_pot * (1 + allowance);
    if (container.size <= 0) {
        fit.words = fmt::format("{}: {} for {:g} pots; the local rules give no size", container.name,
                                litres(fit.volume), size.pots);
        return fit;
    }
    fit.usable = container.size * size.fill_limit.value_or(local.fill_limit.value);
    fit.room = std::max(0.0, fit.usable - present);
    fit.fits = fit.volume <= fit.room * (1 + 1e-12);
    // What stands there and has begun is filled first; an empty one is counted with the new ones.
    const double into_new = present > 0 ? std::max(0.0, fit.volume - fit.room) : fit.volume;
    // A container filled exactly to the limit needs no other; rounding must not ask for one.
    fit.containers = fit.fits && present > 0 ? 0 : static_cast<int>(std::ceil(into_new / fit.usable - 1e-9));
    const double in_last =
        fit.containers == 0 ? present + fit.volume : into_new - (fit.containers - 1) * fit.usable;
    fit.last_full = in_last / container.size;
    fit.call = fit.last_full >= local.call_at.value;
    const std::string there =
        present > 0 ? fmt::format(", {} are there, room for {}", litres(present), litres(fit.room))
                    : std::string();
    const std::string count = present > 0 && fit.fits
                                  ? std::string("it fits")
                                  : fmt::format("{}{} needed", fit.containers, present > 0 ? " more" : "");
    fit.words = fmt::format(
        "{}: {:g} pots of {} mL and {:.0f} % for spills and rinses make {}; {} of {} are usable{}; {}, "
        "the last one ends {:.0f} % full{}",
        container.name, size.pots, significant(fit.per_pot, 3), 100 * allowance, litres(fit.volume),
        litres(fit.usable), litres(container.size), there, count, 100 * fit.last_full,
        fit.call ? ": call for pickup" : "");
    return fit;
}

} // namespace routeweigh::streams
