// SPDX-License-Identifier: MIT
// What a run leaves to be destroyed and neutralised, before any quench.
#include "assess/streams/quench_need.hpp"

#include "assess/streams/stream_rules.hpp"

#include <algorithm>

namespace routeweigh::streams {
namespace {

double grams_per_electron(const QuenchTable& table, const char* id) {
    const Reducer* reducer = table.reducer(id);
    return reducer == nullptr ? 0 : reducer->molar_mass / reducer->electrons;
}

void add_left(std::vector<LeftToDestroy>& list, const LeftToDestroy& more) {
    constexpr double dust = 1e-9; // mol
    if (more.moles < dust) return;
    for (LeftToDestroy& left : list)
        if (left.substance == more.substance) {
            left.moles += more.moles;
            return;
        }
    list.push_back(more);
}

void add_hit(std::vector<StopHit>& list, const StopHit& more) {
    for (StopHit& hit : list)
        if (hit.substance == more.substance) {
            hit.grams += more.grams;
            hit.share = std::max(hit.share, more.share);
            return;
        }
    list.push_back(more);
}

void count_quench(QuenchNeed& need, const QuenchTable& table) {
    for (const LeftToDestroy& left : need.oxidisers) {
        need.electrons += left.moles * left.row->electrons();
        need.acid_made += left.moles * left.row->acid_per_mol();
        if (const auto heat = left.row->equation.enthalpy(left.row->species, table.formation))
            need.heat -= left.moles * *heat;
        else
            need.heat_known = false;
    }
    for (const std::vector<LeftToDestroy>* list : {&need.oxidisers, &need.reducers})
        for (const LeftToDestroy& left : *list)
            if (left.row->gas_per_mol() > 0) {
                need.gas_litres += left.moles * left.row->gas_per_mol() * table.litres_per_mol;
                need.gas = left.row->gas;
            }
    need.hydrogensulfite = need.electrons * grams_per_electron(table, "sodium-bisulfite");
    need.metabisulfite = need.electrons * grams_per_electron(table, "sodium-metabisulfite");
    need.thiosulfate = need.electrons * grams_per_electron(table, "sodium-thiosulfate-pentahydrate");
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

void add_listed(std::vector<StopHit>& list, const StreamDescription& stream) {
    if (stream.form == StreamForm::gas || stream.form == StreamForm::vapour) return;
    for (const StopHit& hit : stream.stops)
        if (hit.rule->destroy) add_hit(list, hit);
}

QuenchNeed need_of(const RouteStream& stream, bool unreacted, const StreamRules& rules) {
    Composition in_pot = unreacted ? stream.unreacted : stream.nominal;
    for (const Portion& portion : stream.recovered.portions()) // was in the pot too
        in_pot.add(*portion.substance, portion.grams);
    const StreamDescription description =
        describe_stream(in_pot, stream.kind, stream.solid_aid, rules.description());
    QuenchNeed need;
    for (const LeftToDestroy& left : description.oxidants)
        add_left(need.oxidisers, left);
    for (const LeftToDestroy& left : description.strong_reducers)
        add_left(need.reducers, left);
    add_listed(need.listed, description);
    count_quench(need, rules.quench);
    if (description.form == StreamForm::aqueous || description.form == StreamForm::organic) {
        const AcidBaseLeft& left = description.acid_base;
        need.strong_acid = left.strong_acid - left.strong_base;
        need.weak_acid = left.weak_acid;
    }
    need.acid_after = std::max(0.0, need.strong_acid + need.acid_made);
    return need;
}

void add_need(QuenchNeed& pot, const QuenchNeed& stream) {
    for (const LeftToDestroy& left : stream.oxidisers)
        add_left(pot.oxidisers, left);
    for (const LeftToDestroy& left : stream.reducers)
        add_left(pot.reducers, left);
    for (const StopHit& hit : stream.listed)
        add_hit(pot.listed, hit);
    for (double QuenchNeed::*sum :
         {&QuenchNeed::electrons, &QuenchNeed::hydrogensulfite, &QuenchNeed::metabisulfite,
          &QuenchNeed::thiosulfate, &QuenchNeed::acid_made, &QuenchNeed::strong_acid, &QuenchNeed::weak_acid,
          &QuenchNeed::gas_litres, &QuenchNeed::heat})
        pot.*sum += stream.*sum;
    if (!stream.gas.empty()) pot.gas = stream.gas;
    pot.heat_known = pot.heat_known && stream.heat_known;
}

double moles_without_electrons(const QuenchNeed& need) {
    double sum = 0;
    for (const LeftToDestroy& left : need.reducers)
        sum += left.moles;
    for (const StopHit& hit : need.listed)
        sum += hit.grams / hit.substance->molar_mass;
    return sum;
}

} // namespace routeweigh::streams
