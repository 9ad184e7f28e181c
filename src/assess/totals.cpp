// SPDX-License-Identifier: MIT
#include "assess/totals.hpp"

#include "assess/input_class.hpp"
#include "assess/total_parts.hpp"
#include "base/index.hpp"
#include "chemistry/element.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <concepts>
#include <cstddef>

namespace routeweigh {
namespace {

const Charge& charge_of(const FlatRoute& route, const Inflow& inflow) {
    return route.route().steps[at(inflow.step)].stages[at(inflow.stage)].charges[at(inflow.charge)];
}

} // namespace

template<Number N>
N TotalsMap::reactants_needed(const EvaluationOf<N>& evaluation) const {
    N needed = 0.0;
    for (std::size_t s = 0; s < evaluation.steps.size(); ++s)
        needed += needed_per_mol_[s] * evaluation.steps[s].theory * evaluation.steps[s].scale;
    return needed;
}

template<Number N>
N TotalsMap::aqueous_effluent(const EvaluationOf<N>& evaluation) const {
    N sum = 0.0;
    for (const Effluent& effluent : effluents_) {
        N mass = 0.0;
        for (int i = effluent.first; i < effluent.last; ++i)
            mass += evaluation.out[at(i)];
        sum += choose(evaluation.out[at(effluent.water)] > 0.5 * mass, mass, N(0.0));
    }
    return sum;
}

template<Number N>
N TotalsMap::sum(const Row& row, const EvaluationOf<N>& evaluation) const {
    N sum = 0.0;
    switch (row.flow) {
    case Flow::out:
        for (const Entry& entry : row.entries)
            sum += entry.coefficient * evaluation.out[at(entry.index)];
        break;
    case Flow::in_gross:
        for (const Entry& entry : row.entries)
            sum += entry.coefficient * evaluation.in[at(entry.index)];
        break;
    case Flow::in_net:
        for (const Entry& entry : row.entries)
            sum += entry.coefficient * (evaluation.in[at(entry.index)] - evaluation.credit[at(entry.index)]);
        break;
    }
    return sum;
}

template<Number N>
void TotalsMap::evaluate(const EvaluationOf<N>& evaluation, TotalsOf<N>& totals) const {
    if constexpr (std::same_as<N, double>)
        totals = constants_;
    else
        totals = constants_in_lanes_;
    for (const Row& row : rows_)
        total(totals, row.member) = sum(row, evaluation);
    for (const N& grams : evaluation.recovered)
        totals.recovered += grams;
    totals.product = evaluation.product;
    totals.yield = route_->scale_plan().has_loop() ? unknown_total : 1.0; // a loop has no longest sequence
    for (const int step : sequence_)
        totals.yield *= evaluation.steps[at(step)].isolated / evaluation.steps[at(step)].theory;
    totals.theoretical_product = totals.product / totals.yield;
    totals.reactants_needed = reactants_needed(evaluation);
    // A batch of another size takes as long, but more or less heat and water.
    for (std::size_t s = 0; s < evaluation.steps.size(); ++s) {
        totals.energy += evaluation.steps[s].scale * energy_[s];
        totals.cooling_water += evaluation.steps[s].scale * cooling_water_[s];
    }
    totals.product_carbon = evaluation.product * product_carbon_;
    totals.aqueous_effluent = aqueous_effluent(evaluation);
    for (const StepResultOf<N>& step : evaluation.steps)
        totals.bromine_ceiling = greater(totals.bromine_ceiling, step.bromine * step.scale * bromine_);
    totals.product_moles = evaluation.product / route_->route().product->molar_mass;
    totals.catalyst_moles = totals.catalyst_hours = unknown_total;
    if (evaluation.steps.size() > 1) return;
    N moles = 0.0;
    for (const int i : catalysts_)
        moles += evaluation.in[at(i)] / route_->inflows()[at(i)].substance->molar_mass;
    totals.catalyst_moles = choose(moles > N(0.0), moles, N(unknown_total));
    totals.catalyst_hours = totals.catalyst_moles * reaction_hours_;
}

template void TotalsMap::evaluate(const EvaluationOf<double>&, TotalsOf<double>&) const;
template void TotalsMap::evaluate(const EvaluationOf<Lanes>&, TotalsOf<Lanes>&) const;

TotalsMap::Counting TotalsMap::counting(double Totals::*member) const {
    for (const Row& row : rows_) {
        if (row.member != member || row.flow == Flow::out) continue;
        Counting counting{std::vector<double>(route_->inflows().size()), row.flow == Flow::in_net};
        for (const Entry& entry : row.entries)
            counting.weights[at(entry.index)] = entry.coefficient;
        return counting;
    }
    return {};
}

std::vector<Contribution> TotalsMap::contributions(double Totals::*member,
                                                   const Evaluation& evaluation) const {
    std::vector<Contribution> result;
    const auto inflows = route_->inflows();
    for (const Row& row : rows_) {
        if (row.member != member) continue;
        if (row.flow == Flow::out) {
            for (const FlatStream& stream : route_->streams()) {
                const FlatStep& step = route_->steps()[at(stream.step)];
                for (std::size_t s = 0; s < step.substances.size(); ++s)
                    if (const double grams = evaluation.out[at(stream.first_outflow) + s]; grams != 0.0)
                        result.push_back(
                            {fmt::format("{}: {}", stream.name, step.substances[s]->name), {}, grams});
            }
            continue;
        }
        for (const Entry& entry : row.entries) {
            const std::size_t i = at(entry.index);
            const Charge& charge = charge_of(*route_, inflows[i]);
            const std::string words = inflows[i].neat
                                          ? std::string(charge.role->name) + ": " + charge.material->name
                                          : fmt::format("{}: {} in {}", charge.role->name,
                                                        inflows[i].substance->name, charge.material->name);
            result.push_back({words, charge.pointer, entry.coefficient * evaluation.in[i]});
            if (row.flow == Flow::in_net && evaluation.credit[i] != 0.0)
                result.push_back({fmt::format("less reused {}", inflows[i].substance->name),
                                  {},
                                  -entry.coefficient * evaluation.credit[i]});
        }
    }
    const auto of_equation = [&](const std::vector<NetEquation::Part>& parts, auto weight) {
        for (const auto& part : parts)
            if (const double value = part.moles * weight(*part.substance); value != 0.0)
                result.push_back({fmt::format("{:g} {}", part.moles, part.substance->name), {}, value});
    };
    const auto molar = [](const Substance& substance) { return substance.molar_mass; };
    const auto atoms = [](int element) {
        return [element](const Substance& substance) { return double(atoms_of(substance.formula, element)); };
    };
    if (member == &Totals::formula_inputs) of_equation(net_.inputs, molar);
    if (member == &Totals::formula_inputs_gross) of_equation(net_.gross_inputs, molar);
    if (member == &Totals::carbon_inputs) of_equation(net_.inputs, atoms(6));
    if (member == &Totals::bromine_inputs) of_equation(net_.inputs, atoms(35));
    if (member == &Totals::nitrogen_inputs) of_equation(net_.inputs, atoms(7));
    if (member == &Totals::chlorine_inputs) of_equation(net_.inputs, atoms(17));
    std::stable_sort(result.begin(), result.end(),
                     [](const auto& a, const auto& b) { return a.value > b.value; });
    return result;
}

} // namespace routeweigh
