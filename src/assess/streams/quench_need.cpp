// SPDX-License-Identifier: MIT
// What a run leaves to be destroyed and neutralised, before any quench.
#include "assess/streams/quench_need.hpp"
#include "assess/streams/pairing.hpp"

#include <algorithm>

namespace routeweigh::streams {
namespace {

double molar_mass_of(const QuenchTable& table, const char* id) {
    const Reducer* reducer = table.reducer(id);
    return reducer == nullptr ? 0 : reducer->molar_mass / reducer->electrons;
}

void add_left(std::vector<LeftToDestroy>& list, const Portion& portion, const QuenchRow& row) {
    for (LeftToDestroy& left : list)
        if (left.substance == portion.substance) {
            left.moles += portion.moles();
            return;
        }
    list.push_back({portion.substance, &row, portion.moles()});
}

} // namespace

Route without_quench(const Route& route) {
    Route bare = route;
    for (Step& step : bare.steps)
        for (Stage& stage : step.stages)
            stage.charges.erase(
                std::remove_if(stage.charges.begin(), stage.charges.end(),
                               [](const Charge& charge) { return charge.role->name == "quench"; }),
                stage.charges.end());
    return bare;
}

QuenchNeed need_of(const std::vector<Composition>& streams, const QuenchRules& rules) {
    constexpr double dust = 1e-9; // mol
    QuenchNeed need;
    Composition liquor;
    for (const Composition& stream : streams)
        for (const Portion& portion : stream.portions()) {
            liquor.add(*portion.substance, portion.grams);
            if (portion.moles() < dust) continue;
            if (const QuenchRow* row = rules.quench.oxidiser(portion.substance->id))
                add_left(need.oxidisers, portion, *row);
            if (const QuenchRow* row = rules.quench.reducer_left(portion.substance->id))
                add_left(need.reducers, portion, *row);
        }
    for (const LeftToDestroy& left : need.oxidisers) {
        need.electrons += left.moles * left.row->electrons();
        need.acid_made += left.moles * left.row->acid_per_mol();
        const auto heat = left.row->equation.enthalpy(left.row->species, rules.quench.formation);
        if (heat)
            need.heat -= left.moles * *heat;
        else
            need.heat_known = false;
    }
    for (const std::vector<LeftToDestroy>* list : {&need.oxidisers, &need.reducers})
        for (const LeftToDestroy& left : *list)
            if (left.row->gas_per_mol() > 0) {
                need.gas_litres += left.moles * left.row->gas_per_mol() * rules.quench.litres_per_mol;
                need.gas = left.row->gas;
            }
    need.hydrogensulfite = need.electrons * molar_mass_of(rules.quench, "sodium-bisulfite");
    need.metabisulfite = need.electrons * molar_mass_of(rules.quench, "sodium-metabisulfite");
    need.thiosulfate = need.electrons * molar_mass_of(rules.quench, "sodium-thiosulfate-pentahydrate");
    const PairedComposition paired = pair_acids_and_bases(liquor, rules.acid_base, rules.catalogue);
    const AcidBaseLeft left = count_acid_and_base(paired.composition, rules.acid_base);
    need.strong_acid = left.strong_acid - left.strong_base;
    need.weak_acid = left.weak_acid;
    return need;
}

} // namespace routeweigh::streams
