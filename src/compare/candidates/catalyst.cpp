// SPDX-License-Identifier: MIT
// Half of each catalyst, down to a stated floor.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
void find_catalyst(const CandidateSource& source, std::vector<Candidate>& candidates) {
    for (const ChargePlace& place : charge_places(source.assessment)) {
        if (place.role() != "catalyst") continue;
        const double now = equivalents(place), floor = source.limits.catalyst_floor;
        if (now <= floor * least_cut) continue;
        const double then = std::max(0.5 * now, floor);
        Candidate candidate;
        candidate.what = fmt::format("cut {} ({}) from {:.3g} to {:.3g} mol %: {} to {}", place.material(),
                                     place.purpose(source.route()), 100.0 * now, 100.0 * then,
                                     amount_text(*place.charge, 1.0), amount_text(*place.charge, then / now));
        candidate.question =
            fmt::format("What if you used less {} ({})?", place.material(), place.purpose(source.route()));
        candidate.changes = {{place.charge->pointer + "/amount", amount_json(*place.charge, then / now)}};
        candidate.cautions = {
            "time: the reaction will be slower; follow it by thin-layer chromatography to the end",
            "a catalyst that dies on the way, or is poisoned, leaves the reaction standing"};
        candidate.step = place.step_index;
        candidates.push_back(std::move(candidate));
    }
}

} // namespace routeweigh
