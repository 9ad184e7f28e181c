// SPDX-License-Identifier: MIT
// Each reactant in excess cut to a stated floor over what the limiting one needs.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"
#include "compare/less_liquid.hpp"
#include "route/limiting_reagent.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

/// Charges that are there for this reactant, and for nothing else.
std::vector<ChargePlace> charges_of(const std::vector<ChargePlace>& all, int step,
                                    const Substance* reactant) {
    std::vector<ChargePlace> found;
    for (const ChargePlace& place : all) {
        if (place.step_index != step || !place.charge->role->reactant || place.charge->role->solvent)
            continue;
        const Component* active = place.charge->material->only_active();
        if (active != nullptr && active->substance == reactant) found.push_back(place);
    }
    return found;
}

} // namespace

void find_excess(const CandidateSource& source, std::vector<Candidate>& candidates) {
    const FlatRoute& flat = source.assessment.flat();
    const std::vector<ChargePlace> all = charge_places(source.assessment);
    const double floor = source.limits.excess_floor;
    for (std::size_t s = 0; s < source.route().steps.size(); ++s) {
        const int step = static_cast<int>(s);
        const auto supplies = reactant_supplies(flat, step, flat.nominal());
        if (supplies.empty() || supplies.front().runs <= 0.0) continue;
        for (const ReactantSupply& supply : supplies) {
            const double equivalents = supply.runs / supplies.front().runs;
            const auto charges = charges_of(all, step, supply.substance);
            if (equivalents <= floor * least_cut || charges.empty()) continue;
            // "eq" is counted on the reference, so a smaller reference would shrink all the rest with it.
            if (supply.substance == source.route().steps[s].reference) continue;
            Candidate candidate;
            candidate.what =
                fmt::format("cut {} from {:.2f} to {:.2f} equivalents{}: ", charges.front().material(),
                            equivalents, floor,
                            source.route().steps.size() > 1 ? fmt::format(" ({})", source.route().steps[s].id)
                                                            : std::string());
            for (const ChargePlace& place : charges) {
                if (&place != &charges.front()) candidate.what += ", ";
                candidate.what += fmt::format("{} to {}", amount_text(*place.charge, 1.0),
                                              amount_text(*place.charge, floor / equivalents));
                candidate.changes.push_back(
                    {place.charge->pointer + "/amount", amount_json(*place.charge, floor / equivalents)});
            }
            candidate.question =
                fmt::format("What if {} were put in with less excess over what the equation needs?",
                            charges.front().material());
            candidate.cautions = {"conversion: the excess may drive the reaction, or make up for what is "
                                  "lost on the way; follow it "
                                  "by thin-layer chromatography to the end",
                                  "time: with less of it the last part reacts slowly"};
            for (const ChargePlace& place : charges)
                if (is_largest_liquid(place, all)) {
                    const auto more = cautions_for_less_liquid(place, all, floor / equivalents);
                    candidate.cautions.insert(candidate.cautions.end(), more.begin(), more.end());
                }
            candidate.step = step;
            candidates.push_back(std::move(candidate));
        }
    }
}

} // namespace routeweigh
