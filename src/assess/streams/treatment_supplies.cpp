// SPDX-License-Identifier: MIT
#include "assess/streams/treatment_supplies.hpp"

#include "base/list.hpp"
#include "chemistry/catalogue.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::streams {
namespace {

constexpr double enough_within = 1e-6; // share of the need; a charge of exactly the need is enough

void add_weighed(TreatmentSupplies& supplies, const Material* material, const std::string& name, double grams,
                 const std::string& use) {
    if (!(grams > 0)) return;
    if (material == nullptr) { // the catalogue does not have it: named all the same
        add_once(supplies.unweighed, fmt::format("{} ({})", name, use));
        return;
    }
    auto found = std::find_if(supplies.weighed.begin(), supplies.weighed.end(),
                              [&](const TreatmentSupply& one) { return one.material == material; });
    if (found == supplies.weighed.end())
        found = supplies.weighed.insert(supplies.weighed.end(), TreatmentSupply{material, 0, {}});
    found->grams += grams;
    add_once(found->uses, use);
}

/// What is to be had beyond the planned quench.
void add_reducer(TreatmentSupplies& supplies, const QuenchPlan& plan, const QuenchTable& table,
                 const Catalogue& catalogue) {
    const double share = 1 + table.excess_high;
    for (const PlannedQuench& one : plan.planned)
        if (one.reducer != nullptr)
            return add_weighed(supplies, catalogue.find_material(one.material), one.material,
                               share * plan.extra_material, "more of the quench to have ready");
    add_weighed(supplies, catalogue.find_material(plan.extra_of), plan.extra_of, share * plan.extra,
                "reducer to have ready");
}

/// What is destroyed by something of its own: acetone for borohydride. The plan counts what is left without
/// any quench, so what the route charges as such is taken off.
void add_own_reagents(TreatmentSupplies& supplies, const QuenchPlan& plan, const Catalogue& catalogue) {
    std::map<const QuenchRow*, double> moles; // the larger of both readings
    std::vector<const QuenchRow*> rows;
    for (const QuenchNeed* need : {&plan.destroyed, &plan.destroyed_unreacted})
        for (const auto* list : {&need->oxidisers, &need->reducers})
            for (const LeftToDestroy& left : *list) {
                if (left.row == nullptr || left.row->by_sulfite()) continue;
                add_once(rows, left.row);
                moles[left.row] = std::max(moles[left.row], left.moles);
            }
    std::map<const Substance*, double> charged; // g that no row has used yet
    for (const PlannedQuench& one : plan.planned)
        charged[one.substance] += one.grams;
    for (const QuenchRow* row : rows) {
        const Material* reagent = catalogue.find_material(row->reagent_name);
        const Component* active = reagent != nullptr ? reagent->only_active() : nullptr;
        const std::string use = "destroys " + row->name;
        const double needed = moles[row] * row->reagent_per_mol(); // mol
        if (active == nullptr) {                                   // no molar mass to weigh it by
            if (needed > 0) add_once(supplies.unweighed, fmt::format("{} ({})", row->reagent_name, use));
            continue;
        }
        const double grams = needed * active->substance->molar_mass;
        double& ready = charged[active->substance];
        const double covered = std::min(grams, ready);
        ready -= covered;
        if (grams - covered > enough_within * grams)
            add_weighed(supplies, reagent, reagent->name, (grams - covered) / active->mass_fraction, use);
    }
}

void add_papers(TreatmentSupplies& supplies, const QuenchPlan& plan) {
    for (const QuenchNeed* need : {&plan.destroyed, &plan.destroyed_unreacted})
        for (const auto* list : {&need->oxidisers, &need->reducers})
            for (const LeftToDestroy& left : *list)
                if (left.row != nullptr)
                    for (const std::string& paper : left.row->papers)
                        add_once(supplies.unweighed, paper);
}

} // namespace

TreatmentSupplies treatment_supplies(const QuenchPlan& plan, const QuenchTable& table,
                                     const Catalogue& catalogue, std::string_view step) {
    TreatmentSupplies supplies;
    if (plan.destroys()) {
        add_reducer(supplies, plan, table, catalogue);
        add_own_reagents(supplies, plan, catalogue);
        add_papers(supplies, plan);
    }
    for (const StreamToNeutralise& one : plan.to_neutralise) {
        const std::string stream = step.empty() ? one.stream : fmt::format("{}: {}", step, one.stream);
        if (const BaseNeeded* base = one.usual_base())
            add_weighed(supplies, catalogue.find_material(base->base->name), base->base->name, base->grams,
                        "base for " + stream);
        else if (one.strong_base > 0)
            add_once(supplies.unweighed,
                     fmt::format("dilute acid (citric, acetic or hydrochloric) for {}", stream));
        else
            add_once(supplies.unweighed, fmt::format("sodium hydrogencarbonate by paper for {}", stream));
    }
    if (!plan.to_neutralise.empty()) add_once(supplies.unweighed, "pH paper");
    return supplies;
}

} // namespace routeweigh::streams
