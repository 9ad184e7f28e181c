// SPDX-License-Identifier: MIT
// Water in place of any other liquid that a crude product is poured into.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"

#include "assess/input_class.hpp"

#include <fmt/format.h>

namespace routeweigh {

void find_water_drown_out(const CandidateSource& source, std::vector<Candidate>& candidates) {
    for (const ChargePlace& place : charge_places(source.assessment)) {
        const Material& material = *place.charge->material;
        const bool poured = place.charge->role->drown_out || place.role() == "antisolvent";
        if (!poured || (material.is_neat() && is_water(*material.components.front().substance))) continue;
        Candidate candidate;
        candidate.what = fmt::format("take water in place of {} ({}), {}", place.material(),
                                     place.purpose(source.route()), grams_text(place.grams));
        candidate.question = fmt::format("What if the {} ({}) were plain water?", place.material(),
                                         place.purpose(source.route()));
        candidate.changes = {
            {place.charge->pointer + "/material", json_quoted("water")},
            {place.charge->pointer + "/amount", json_quoted(fmt::format("{} g", place.grams))}};
        candidate.cautions = {
            "solubility: see whether the product comes down from water, and what comes down with it",
            "heat and gas: see in the data sheets whether anything in the pot reacts with water"};
        candidate.step = place.step_index;
        candidates.push_back(std::move(candidate));
    }
}

} // namespace routeweigh
