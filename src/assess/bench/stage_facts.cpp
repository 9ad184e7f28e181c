// SPDX-License-Identifier: MIT
#include "assess/bench/stage_facts.hpp"

#include "assess/total_parts.hpp"
#include "base/index.hpp"

#include <algorithm>

namespace routeweigh::bench {
namespace {

constexpr double litres_per_mol = 24.47; // ideal gas at 25 degC and 101.325 kPa
constexpr double counts_from = 0.05;     // share by volume of the pot; our line
constexpr double flashes_below = 60;     // degC, the line of flammable liquids in the GHS
constexpr double warm_from = 40;         // degC; common practice, no source

bool is_bromine_maker(const Stage& stage) {
    for (const Reaction& reaction : stage.reactions)
        for (const auto& part : reaction.equation.parts)
            if (part.substance->free_bromine > 0) return true;
    return std::any_of(stage.charges.begin(), stage.charges.end(), [](const Charge& charge) {
        return std::any_of(charge.material->components.begin(), charge.material->components.end(),
                           [](const Component& part) { return part.substance->free_bromine > 0; });
    });
}

void read_liquids(StageFacts& facts) {
    for (const streams::Portion& portion : facts.pot.portions()) {
        const Substance& liquid = *portion.substance;
        if (liquid.phase != Substance::Phase::liquid ||
            streams::millilitres(portion) < counts_from * facts.volume)
            continue;
        if (liquid.flash_point && *liquid.flash_point < flashes_below) facts.flammable.push_back(&liquid);
        if (liquid.boiling_point &&
            (facts.first_to_boil == nullptr || *liquid.boiling_point < *facts.first_to_boil->boiling_point))
            facts.first_to_boil = &liquid;
    }
    if (facts.stage->temperature && facts.first_to_boil != nullptr)
        facts.to_boil = *facts.first_to_boil->boiling_point - facts.stage->temperature->celsius();
}

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

/// What is in the pot (mol, by local substance) when the reactions of each stage are done, before anything
/// leaves. A reading with nothing lost, for volumes and cautions; the ledger has its own.
std::vector<std::vector<double>> contents_of(const FlatRoute& flat, const Inputs& inputs, int step,
                                             const std::vector<std::vector<double>>& extents) {
    const FlatStep& compiled = flat.steps()[at(step)];
    const Step& written = flat.route().steps[at(step)];
    std::vector<double> pot(compiled.substances.size(), 0.0);
    std::vector<std::vector<double>> contents;
    for (std::size_t g = 0; g < compiled.stages.size(); ++g) {
        const FlatStage& stage = compiled.stages[g];
        for (const Inflow& inflow : flat.inflows())
            if (inflow.step == step && inflow.stage == static_cast<int>(g) && !inflow.as_used)
                pot[at(inflow.local)] +=
                    inputs.charged[at(inflow.slot)] * inflow.fraction / compiled.molar_mass[at(inflow.local)];
        const std::vector<double> before = pot;
        for (std::size_t s = 0; s < pot.size(); ++s) {
            for (std::size_t r = 0; r < written.stages[g].reactions.size(); ++r)
                pot[s] += extents[g][r] *
                          written.stages[g].reactions[r].equation.coefficient_of(compiled.substances[s]);
            pot[s] = std::max(0.0, pot[s]); // rounding, and what the air gave
        }
        for (const int gas : stage.forming_gases)
            pot[at(gas)] = std::min(pot[at(gas)], before[at(gas)]);
        contents.push_back(pot);
        for (const FlatSeparation& separation : stage.separations) {
            const double share = separation.share_leaving(pot, compiled.molar_mass);
            for (std::size_t s = 0; s < pot.size(); ++s)
                pot[s] -= pot[s] * separation.leaves[s] * share;
        }
    }
    return contents;
}

} // namespace

bool StageFacts::separates(SeparationMethod method) const {
    return std::any_of(stage->separations.begin(), stage->separations.end(),
                       [method](const Separation& separation) { return separation.by == method; });
}

bool StageFacts::has_role(std::string_view role) const {
    return std::any_of(stage->charges.begin(), stage->charges.end(),
                       [role](const Charge& charge) { return charge.role->name == role; });
}

std::vector<StageFacts> stages_of(const FlatRoute& flat, const Inputs& inputs, const Evaluation& evaluation,
                                  int step, const std::vector<Reagent>& reagents) {
    const Step& written = flat.route().steps[at(step)];
    const FlatStep& compiled = flat.steps()[at(step)];
    const auto extents = flat.extents(step, inputs);
    const auto contents = contents_of(flat, inputs, step, extents);
    std::vector<StageFacts> stages;
    for (std::size_t g = 0; g < written.stages.size(); ++g) {
        StageFacts facts;
        facts.step = &written;
        facts.stage = &written.stages[g];
        facts.index = static_cast<int>(g);
        for (const Reagent& reagent : reagents)
            if (reagent.stage == facts.index) facts.charged.push_back(&reagent);
        for (std::size_t s = 0; s < compiled.substances.size(); ++s)
            facts.pot.add(*compiled.substances[s], contents[g][s] * compiled.molar_mass[s]);
        facts.volume = facts.pot.volume().millilitres;
        read_liquids(facts);
        read_gases(facts, extents[g], written.dissolved);
        if (is_bromine_maker(*facts.stage))
            facts.bromine = evaluation.steps[at(step)].bromine * bromine_molar_mass(flat.route());
        facts.warm = facts.stage->temperature && facts.stage->temperature->celsius() >= warm_from;
        const bool rinses = facts.has_role("wash") || facts.has_role("rinse");
        facts.on_filter =
            rinses && facts.stage->reactions.empty() && facts.separates(SeparationMethod::filtration);
        if (facts.separates(SeparationMethod::drying) && !facts.separates(SeparationMethod::evaporation) &&
            g > 0)
            facts.wet_with_flammable = !facts.flammable.empty();
        stages.push_back(std::move(facts));
    }
    return stages;
}

} // namespace routeweigh::bench
