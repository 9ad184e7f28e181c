// SPDX-License-Identifier: MIT
#include "assess/streams/treatment_supplies.hpp"

#include "base/list.hpp"
#include "chemistry/catalogue.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <map>

namespace routeweigh::streams {
namespace {

void add_weighed(TreatmentSupplies& supplies, const Material* material, const std::string& name, double grams,
                 const std::string& use) {
    if (!(grams > 0)) return;
    if (material == nullptr) { // the catalogue does not have it: named all the same
        add_once(supplies.unweighed, fmt::format("{}, {}", name, use));
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
                               share * plan.extra_material, "more reducer to have ready");
    add_weighed(supplies, catalogue.find_material(plan.extra_of), plan.extra_of, share * plan.extra,
                "reducer to have ready");
}

/// What is destroyed by something of its own: acetone for borohydride.
void add_own_reagents(TreatmentSupplies& supplies, const QuenchPlan& plan, const Catalogue& catalogue) {
    std::map<const QuenchRow*, double> moles; // the larger of both readings
    std::vector<const QuenchRow*> rows;
    for (const QuenchNeed* need : {&plan.nominal, &plan.unreacted})
        for (const auto* list : {&need->oxidisers, &need->reducers})
            for (const LeftToDestroy& left : *list) {
                if (left.row == nullptr || left.row->by_sulfite()) continue;
                add_once(rows, left.row);
                moles[left.row] = std::max(moles[left.row], left.moles);
            }
    for (const QuenchRow* row : rows) {
        const Material* reagent = catalogue.find_material(row->reagent_name);
        const double molar_mass =
            reagent != nullptr && reagent->is_neat() ? reagent->components.front().substance->molar_mass : 1;
        add_weighed(supplies, reagent, row->reagent_name, moles[row] * row->reagent_per_mol() * molar_mass,
                    "destroys " + row->name);
    }
}

void add_papers(TreatmentSupplies& supplies, const QuenchPlan& plan) {
    for (const QuenchNeed* need : {&plan.nominal, &plan.unreacted})
        for (const auto* list : {&need->oxidisers, &need->reducers})
            for (const LeftToDestroy& left : *list)
                if (left.row != nullptr)
                    for (const std::string& paper : left.row->papers)
                        add_once(supplies.unweighed, paper);
}

} // namespace

TreatmentSupplies treatment_supplies(const QuenchPlan& plan, const QuenchTable& table,
                                     const Catalogue& catalogue) {
    TreatmentSupplies supplies;
    if (plan.destroys) {
        add_reducer(supplies, plan, table, catalogue);
        add_own_reagents(supplies, plan, catalogue);
        add_papers(supplies, plan);
    }
    for (const StreamToNeutralise& one : plan.to_neutralise) {
        if (const BaseNeeded* base = one.usual_base())
            add_weighed(supplies, catalogue.find_material(base->base->name), base->base->name, base->grams,
                        "base for " + one.stream);
        else if (one.strong_base > 0)
            add_once(supplies.unweighed,
                     fmt::format("dilute citric, acetic or hydrochloric acid, for {}", one.stream));
        else
            add_once(supplies.unweighed,
                     fmt::format("sodium hydrogencarbonate by paper, for {}", one.stream));
    }
    if (!plan.to_neutralise.empty()) add_once(supplies.unweighed, "pH paper");
    return supplies;
}

} // namespace routeweigh::streams
