// SPDX-License-Identifier: MIT
#include "assess/bench/stage_facts.hpp"

#include "assess/bench/cold_bath.hpp"
#include "assess/pot_contents.hpp"
#include "base/index.hpp"
#include "base/list.hpp"

#include <algorithm>

namespace routeweigh::bench {
namespace {

constexpr double litres_per_mol = 24.47; // ideal gas at 25 degC and 101.325 kPa
constexpr double flashes_below = 60;     // degC, the line of flammable liquids in the GHS

void read_gases(StageFacts& facts, const std::vector<double>& extents,
                const std::vector<const Substance*>& dissolved) {
    for (std::size_t r = 0; r < facts.stage->reactions.size(); ++r)
        for (const auto& part : facts.stage->reactions[r].equation.parts) {
            if (part.substance->phase != Substance::Phase::gas || part.coefficient <= 0) continue;
            if (std::find(dissolved.begin(), dissolved.end(), part.substance) != dissolved.end()) continue;
            const double litres = extents[r] * part.coefficient * litres_per_mol;
            if (litres <= 0) continue;
            const auto same = std::find_if(facts.gases.begin(), facts.gases.end(),
                                           [&](const auto& gas) { return gas.substance == part.substance; });
            if (same == facts.gases.end())
                facts.gases.push_back({part.substance, litres});
            else
                same->litres += litres;
        }
}

/// What water turns into an organic acid: by the groups by which the waste is judged.
const Substance* find_anhydride(const StageFacts& facts, const streams::ReactivityGroups& groups) {
    constexpr int carboxylic_acids = 3, react_with_water = 107;
    constexpr double counts_from = 0.005; // share by mass of the pot; our line
    if (facts.is(Phase::reaction) || !(facts.has_role("quench") || facts.has_role("drown-out")))
        return nullptr;
    for (const streams::Portion& portion : facts.pot.before.portions()) {
        const streams::GroupMember* member = groups.find(*portion.substance);
        if (member != nullptr && contains(member->groups, carboxylic_acids) &&
            contains(member->groups, react_with_water) &&
            portion.grams >= counts_from * facts.pot.before.total())
            return portion.substance;
    }
    return nullptr;
}

} // namespace

bool StageFacts::separates(SeparationMethod method) const {
    return bench::separates(*stage, method);
}

bool StageFacts::has_role(std::string_view role) const {
    return std::any_of(stage->charges.begin(), stage->charges.end(),
                       [role](const Charge& charge) { return charge.role->name == role; });
}

bool StageFacts::takes_in_gas() const {
    return std::any_of(charged.begin(), charged.end(),
                       [](const Reagent* reagent) { return reagent->is_gas(); });
}

bool StageFacts::cools_before_filtering() const {
    return bench::cools_before_filtering(*step, *stage);
}

std::vector<StageFacts> stages_of(const FlatRoute& flat, const Inputs& inputs, const Evaluation& evaluation,
                                  int step, const std::vector<Reagent>& reagents, const BenchRules& rules) {
    const Step& written = flat.route().steps[at(step)];
    const auto extents = flat.extents(step, inputs);
    std::vector<PotContents> contents = contents_of(flat, inputs, step, extents);
    std::vector<StageFacts> stages;
    for (std::size_t g = 0; g < written.stages.size(); ++g) {
        StageFacts facts;
        facts.step = &written;
        facts.stage = &written.stages[g];
        facts.index = static_cast<int>(g);
        for (const Reagent& reagent : reagents)
            if (reagent.stage == facts.index) facts.charged.push_back(&reagent);
        facts.pot = std::move(contents[g]);
        facts.volume = std::max(facts.pot.before.volume().millilitres, facts.pot.after.volume().millilitres);
        for (const Substance* liquid : main_liquids(facts.pot))
            if (liquid->flash_point && *liquid->flash_point < flashes_below)
                facts.flammable.push_back(liquid);
        facts.condenses = needs_condenser(*facts.stage, facts.pot, rules.condenser_within);
        facts.anhydride_for_water = find_anhydride(facts, rules.streams.compatibility.groups);
        read_gases(facts, extents[g], written.dissolved);
        facts.bromine = free_bromine_grams(flat, evaluation, step, *facts.stage);
        facts.warm = is_warm(*facts.stage);
        facts.on_filter = washes_on_filter(*facts.stage);
        if (facts.separates(SeparationMethod::drying) && !facts.separates(SeparationMethod::evaporation) &&
            g > 0)
            facts.wet_with_flammable = !facts.flammable.empty();
        stages.push_back(std::move(facts));
    }
    return stages;
}

} // namespace routeweigh::bench
