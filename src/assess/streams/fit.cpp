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

ContainerFit fit_container(const Container& container, std::vector<StreamVolume> streams, double pots,
                           const LocalRules& local, Begun begun) {
    ContainerFit fit;
    fit.container = &container;
    fit.streams = std::move(streams);
    fit.present = begun.present;
    for (const StreamVolume& stream : fit.streams)
        fit.per_pot += stream.millilitres;
    fit.volume = pots * fit.per_pot * (1 + local.allowance.value);
    const std::string count_of_pots = fmt::format("{:g} {}", pots, pots == 1 ? "pot" : "pots");
    if (container.size <= 0) {
        fit.words = fmt::format("{}: {} for {}; the local rules give no size", container.name,
                                litres(fit.volume), count_of_pots);
        return fit;
    }
    const double size_there = begun.size > 0 ? begun.size : container.size;
    fit.usable = container.size * local.fill_limit.value;
    fit.room = std::max(0.0, size_there * local.fill_limit.value - fit.present);
    const bool has_begun = fit.present > 0;
    fit.fits = has_begun && fit.volume <= fit.room * (1 + 1e-12);
    const double into_new = has_begun ? std::max(0.0, fit.volume - fit.room) : fit.volume;
    // A container filled exactly to the limit needs no other; rounding must not ask for one.
    fit.containers = fit.fits ? 0 : static_cast<int>(std::ceil(into_new / fit.usable - 1e-9));
    fit.last_full = fit.containers == 0 ? (fit.present + fit.volume) / size_there
                                        : (into_new - (fit.containers - 1) * fit.usable) / container.size;
    fit.call = fit.last_full >= local.call_at.value;
    fit.words = fmt::format(
        "{}: {} of {} mL and {:.0f} % for spills and rinses make {}; {} of {} are usable{}; {}, "
        "the last one ends {:.0f} % full{}",
        container.name, count_of_pots, significant(fit.per_pot, 3), 100 * local.allowance.value,
        litres(fit.volume), litres(fit.usable), litres(container.size),
        has_begun ? fmt::format(", {} are there, room for {}", litres(fit.present), litres(fit.room)) : "",
        fit.fits ? std::string("it fits")
                 : fmt::format("{}{} needed", fit.containers, has_begun ? " more" : ""),
        100 * fit.last_full, fit.call ? ": call for pickup" : "");
    return fit;
}

} // namespace routeweigh::streams
