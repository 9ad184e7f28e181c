// SPDX-License-Identifier: MIT
#include "assess/bench/reagents.hpp"

#include "assess/mixture/mixture.hpp"
#include "base/index.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh::bench {
namespace {

/// Roles whose moles matter beside those that react: everything else only dissolves, washes or dries.
bool counts_moles(const Role& role) {
    return role.reactant || role.catalyst || role.name == "quench" || role.name == "neutraliser";
}

} // namespace

bool Reagent::is_gas() const {
    return phase_of(mixture_of(material())) == Substance::Phase::gas;
}

const Substance* counted_in(const Charge& charge, const SubstanceEquation& overall) {
    if (charge.of != nullptr) return charge.of;
    if (!counts_moles(*charge.role)) return nullptr;
    for (const Component& component : charge.material->components)
        if (!component.carrier && overall.coefficient_of(component.substance) < 0) return component.substance;
    const Component* active = charge.material->only_active();
    return active != nullptr && active->substance->has_formula() ? active->substance : nullptr;
}

std::vector<Reagent> reagents_of(const FlatRoute& flat, const Inputs& inputs, int step) {
    const Step& written = flat.route().steps[at(step)];
    std::vector<Reagent> reagents;
    for (const Inflow& inflow : flat.inflows()) {
        if (inflow.step != step || inflow.as_used || inflow.role->is_trace()) continue;
        const Charge& charge = written.stages[at(inflow.stage)].charges[at(inflow.charge)];
        if (reagents.empty() || reagents.back().charge != &charge) {
            Reagent reagent;
            reagent.stage = inflow.stage;
            reagent.number = inflow.charge;
            reagent.charge = &charge;
            reagent.grams = inputs.charged[at(inflow.slot)];
            reagent.counted = counted_in(charge, written.overall);
            if (charge.material->density &&
                phase_of(mixture_of(*charge.material)) == Substance::Phase::liquid)
                reagent.millilitres = reagent.grams / *charge.material->density;
            reagents.push_back(reagent);
        }
        reagents.back().made_before = reagents.back().made_before || inflow.fed_by >= 0;
        if (inflow.substance == reagents.back().counted)
            reagents.back().moles += reagents.back().grams * inflow.fraction / inflow.substance->molar_mass;
    }
    double reference = 0;
    for (const Reagent& reagent : reagents)
        if (reagent.counted == written.reference && counts_moles(*reagent.charge->role))
            reference += reagent.moles;
    if (reference > 0)
        for (Reagent& reagent : reagents)
            if (reagent.counted != nullptr) reagent.equivalents = reagent.moles / reference;
    return reagents;
}

std::vector<ReactantSupply> Theory::run_out_first() const {
    constexpr double weighing = 0.005; // share; common practice, no source
    std::vector<ReactantSupply> found;
    for (const ReactantSupply& supply : supplies)
        if (supply.runs <= limiting().runs * (1 + weighing)) found.push_back(supply);
    return found;
}

Theory theory_of(const FlatRoute& flat, const Inputs& inputs, const Evaluation& evaluation, int step) {
    const Step& written = flat.route().steps[at(step)];
    const StepResult& result = evaluation.steps[at(step)];
    Theory theory;
    theory.supplies = reactant_supplies(flat, step, inputs);
    const auto& stages = flat.steps()[at(step)].stages;
    for (std::size_t g = 0; g < stages.size(); ++g)
        if (stages[g].extents.makes_product()) theory.last_stage = static_cast<int>(g);
    theory.coefficient = written.overall.coefficient_of(written.product);
    theory.moles = result.theory;
    theory.grams = result.theory * written.product->molar_mass;
    theory.isolated = result.isolated * written.product->molar_mass;
    theory.by_supply = !theory.supplies.empty() && std::abs(theory.limiting().runs * theory.coefficient -
                                                            theory.moles) <= 1e-6 * theory.moles;
    return theory;
}

} // namespace routeweigh::bench
