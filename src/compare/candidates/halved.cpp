// SPDX-License-Identifier: MIT
// Half of each solvent, wash, rinse and drown-out.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"
#include "compare/less_liquid.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

/// What half the amount might break, by what it was put in for.
std::vector<std::string> cautions_for_less(const ChargePlace& place, const std::vector<ChargePlace>& all) {
    const std::string_view role = place.role();
    if (role == "solvent") return cautions_for_less_liquid(place, all, 0.5);
    if (role == "recrystallisation solvent")
        return {
            fmt::format("solubility: the crude may not dissolve{}; find the least volume with a test tube",
                        at_temperature(*place.stage)),
            "purity: what stayed in the mother liquor may come down with the crystals; take the melting "
            "range"};
    if (role == "extraction")
        return {"each extraction takes less from half the volume; test the other layer for product, or "
                "extract in "
                "portions",
                "layers: salt or product may come down; see whether they still part"};
    if (role == "drown-out" || role == "antisolvent")
        return {"less product may come down, or as an oil; add a little more to the clear filtrate and look",
                "what the liquid kept in solution may come down with the product; take the melting range"};
    if (role == "eluent") return {"separation: spots or bands may run together; try it on a plate first"};
    return {"what it was to wash away may stay: test the last washing, and take the melting range",
            "product held in the flask or on the filter may stay behind"};
}

std::string question_of(const ChargePlace& place, const Route& route) {
    return fmt::format("What if you used half as much {} ({})?", place.material(), place.purpose(route));
}

} // namespace

void find_halved(const CandidateSource& source, std::vector<Candidate>& candidates) {
    const std::vector<ChargePlace> all = charge_places(source.assessment);
    for (const ChargePlace& place : all) {
        // A solvent that also reacts is judged as the reactant it is.
        if (!place.charge->role->solvent || place.charge->role->reactant || place.grams <= 0.0) continue;
        Candidate candidate;
        candidate.what =
            fmt::format("halve {} ({}): {} to {}", place.material(), place.purpose(source.route()),
                        amount_text(*place.charge, 1.0), amount_text(*place.charge, 0.5));
        candidate.question = question_of(place, source.route());
        candidate.changes = {{place.charge->pointer + "/amount", amount_json(*place.charge, 0.5)}};
        candidate.cautions = cautions_for_less(place, all);
        candidate.step = place.step_index;
        candidates.push_back(std::move(candidate));
    }
}

} // namespace routeweigh
