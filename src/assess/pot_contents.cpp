// SPDX-License-Identifier: MIT
#include "assess/pot_contents.hpp"

#include "assess/total_parts.hpp"
#include "base/index.hpp"

#include <algorithm>

namespace routeweigh {
namespace {

constexpr double main_from = 0.05; // share by volume of the pot

streams::Composition composition_of(const FlatStep& step, const std::vector<double>& moles) {
    streams::Composition pot;
    for (std::size_t s = 0; s < moles.size(); ++s)
        pot.add(*step.substances[s], moles[s] * step.molar_mass[s]);
    return pot;
}

bool is_bromine_maker(const Stage& stage) {
    for (const Reaction& reaction : stage.reactions)
        for (const auto& part : reaction.equation.parts)
            if (part.substance->free_bromine > 0) return true;
    return std::any_of(stage.charges.begin(), stage.charges.end(), [](const Charge& charge) {
        return std::any_of(charge.material->components.begin(), charge.material->components.end(),
                           [](const Component& part) { return part.substance->free_bromine > 0; });
    });
}

} // namespace

std::vector<PotContents> contents_of(const FlatRoute& flat, const Inputs& inputs, int step,
                                     const std::vector<std::vector<double>>& extents) {
    const FlatStep& compiled = flat.steps()[at(step)];
    const Step& written = flat.route().steps[at(step)];
    std::vector<double> pot(compiled.substances.size(), 0.0); // mol
    std::vector<PotContents> contents;
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
        contents.push_back({composition_of(compiled, before), composition_of(compiled, pot)});
        for (const FlatSeparation& separation : stage.separations) {
            const double share = separation.share_leaving<double>(pot, compiled.molar_mass);
            for (std::size_t s = 0; s < pot.size(); ++s)
                pot[s] -= pot[s] * separation.leaves[s] * share;
        }
    }
    return contents;
}

std::vector<const Substance*> main_liquids(const PotContents& pot) {
    std::vector<const Substance*> liquids;
    for (const streams::Composition* content : {&pot.before, &pot.after}) {
        const double least = main_from * content->volume().millilitres;
        for (const streams::Portion& portion : content->portions())
            if (portion.substance->phase == Substance::Phase::liquid &&
                streams::millilitres(portion) >= least &&
                std::find(liquids.begin(), liquids.end(), portion.substance) == liquids.end())
                liquids.push_back(portion.substance);
    }
    return liquids;
}

const Substance* needs_condenser(const Stage& stage, const PotContents& pot, double within) {
    if (!stage.temperature) return nullptr;
    const Substance* first = nullptr;
    for (const Substance* liquid : main_liquids(pot))
        if (liquid->boiling_point && stage.temperature->celsius() >= *liquid->boiling_point - within &&
            (first == nullptr || *liquid->boiling_point < *first->boiling_point))
            first = liquid;
    const bool recrystallised =
        std::any_of(stage.charges.begin(), stage.charges.end(),
                    [](const Charge& charge) { return charge.role->name == "recrystallisation solvent"; });
    return first != nullptr && recrystallised && first->id == "water" ? nullptr : first;
}

bool boils_off(const Separation& separation) {
    return separation.by == SeparationMethod::distillation || separation.by == SeparationMethod::evaporation;
}

bool boils_off(const Stage& stage) {
    return std::any_of(stage.separations.begin(), stage.separations.end(),
                       [](const Separation& separation) { return boils_off(separation); });
}

double free_bromine_grams(const FlatRoute& flat, const Evaluation& evaluation, int step, const Stage& stage) {
    return is_bromine_maker(stage) ? evaluation.steps[at(step)].bromine * bromine_molar_mass(flat.route())
                                   : 0.0;
}

} // namespace routeweigh
