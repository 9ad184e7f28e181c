// SPDX-License-Identifier: MIT
// Which inflows and outflows count in which total, and what no amount changes.
#include "assess/totals.hpp"

#include "assess/input_class.hpp"
#include "assess/total_parts.hpp"
#include "base/index.hpp"
#include "chemistry/element.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstring>
#include <functional>
#include <numeric>
#include <optional>

namespace routeweigh {
namespace {

Phase phase_of(const FlatRoute& route, const Inflow& inflow) {
    return route.route().steps[at(inflow.step)].stages[at(inflow.stage)].phase;
}

/// The same in every lane. The totals are nothing but numbers, in the same order in both.
TotalsOf<Lanes> in_lanes(const Totals& totals) {
    TotalsOf<Lanes> result;
    for (std::size_t offset = 0; offset < sizeof totals; offset += sizeof(double)) {
        double value = 0.0;
        std::memcpy(&value, reinterpret_cast<const std::byte*>(&totals) + offset, sizeof value);
        const Lanes same = value;
        std::memcpy(reinterpret_cast<std::byte*>(&result) + lane_count * offset, &same, sizeof same);
    }
    return result;
}

} // namespace

TotalsMap::TotalsMap(const FlatRoute& route, const NetEquation& net, const std::set<const Substance*>& benign)
    : route_(&route), net_(net) {
    add_rows(benign);
    add_equation_totals(net);
    add_utilities();
    add_volumes();
    constants_in_lanes_ = in_lanes(constants_);
    add_effluents();
    product_carbon_ = carbon_fraction(route.route(), *route.route().product);
    bromine_ = bromine_molar_mass(route.route());
    const auto inflows = route.inflows();
    for (std::size_t i = 0; i < inflows.size() && route.steps().size() == 1; ++i)
        if (inflows[i].role->name == "catalyst" && !inflows[i].carrier)
            catalysts_.push_back(static_cast<int>(i));
    const Evaluation nominal = route.evaluate(route.nominal());
    std::vector<double> yields;
    for (const StepResult& step : nominal.steps)
        yields.push_back(step.isolated / step.theory);
    sequence_ = route.scale_plan().longest_sequence(yields);
    std::set<std::pair<int, const Substance*>> fed;
    for (const Inflow& inflow : route.inflows())
        if (inflow.fed_by >= 0) fed.emplace(inflow.step, inflow.substance);
    for (const Step& step : route.route().steps) {
        const int index = static_cast<int>(needed_per_mol_.size());
        double needed = 0.0;
        for (const auto& part : step.overall.parts) {
            if (part.coefficient < 0.0 && !fed.contains({index, part.substance}))
                needed -= part.coefficient * part.substance->molar_mass;
        }
        needed_per_mol_.push_back(needed / step.overall.coefficient_of(step.product));
    }
}

void TotalsMap::add_rows(const std::set<const Substance*>& benign) {
    using Test = std::function<double(const Inflow&)>; // g counted per g charged
    const auto in_class = [](InputClass wanted) {
        return [wanted](const Inflow& inflow) { return input_class(inflow) == wanted ? 1.0 : 0.0; };
    };
    const auto in_phase = [this](Phase wanted) {
        return
            [this, wanted](const Inflow& inflow) { return phase_of(*route_, inflow) == wanted ? 1.0 : 0.0; };
    };
    const auto part =
        [this](const Inflow& inflow) { // 0 reactants and reagents, 1 reaction solvent, 2 work-up, 3 water
            const bool reaction = phase_of(*route_, inflow) == Phase::reaction;
            switch (input_class(inflow)) {
            case InputClass::reactant:
                return 0;
            case InputClass::water:
                return 3;
            case InputClass::solvent:
                return reaction ? 1 : 2;
            case InputClass::aid:
                return reaction ? 0 : 2;
            }
            return 2;
        };
    const auto in_part = [part](int wanted) {
        return [part, wanted](const Inflow& inflow) { return part(inflow) == wanted ? 1.0 : 0.0; };
    };
    const auto all = [](const Inflow&) { return 1.0; };
    const Route& route = route_->route();
    const double bromine = bromine_molar_mass(route);
    const Test bromine_handled = [bromine](const Inflow& inflow) {
        return inflow.substance->free_bromine > 0.0 && inflow.substance->carried_bromine == 0.0
                   ? inflow.substance->free_bromine * bromine / inflow.substance->molar_mass
                   : 0.0;
    };
    const Test bromine_carried = [bromine](const Inflow& inflow) {
        return inflow.substance->carried_bromine > 0.0
                   ? inflow.substance->carried_bromine * bromine / inflow.substance->molar_mass
                   : 0.0;
    };
    const Test carbon = [&route](const Inflow& inflow) {
        return inflow.reactant ? carbon_fraction(route, *inflow.substance) : 0.0;
    };
    const std::vector<std::tuple<double Totals::*, Flow, Test>> definitions{
        {&Totals::inputs, Flow::in_net, all},
        {&Totals::inputs_gross, Flow::in_gross, all},
        {&Totals::reactants_gross, Flow::in_gross, in_class(InputClass::reactant)},
        {&Totals::reactants_and_aids, Flow::in_net,
         [](const Inflow& inflow) {
             const InputClass found = input_class(inflow);
             return found == InputClass::reactant || found == InputClass::aid ? 1.0 : 0.0;
         }},
        {&Totals::solvents, Flow::in_net, in_class(InputClass::solvent)},
        {&Totals::water, Flow::in_net, in_class(InputClass::water)},
        {&Totals::benign, Flow::in_net,
         [&benign](const Inflow& inflow) { return benign.contains(inflow.substance) ? 1.0 : 0.0; }},
        {&Totals::part_reactants, Flow::in_net, in_part(0)},
        {&Totals::part_reaction_solvent, Flow::in_net, in_part(1)},
        {&Totals::part_workup, Flow::in_net, in_part(2)},
        {&Totals::reaction_stages, Flow::in_net, in_phase(Phase::reaction)},
        {&Totals::workup_stages, Flow::in_net, in_phase(Phase::workup)},
        {&Totals::purification_stages, Flow::in_net, in_phase(Phase::purification)},
        {&Totals::drown_out, Flow::in_net,
         [](const Inflow& inflow) { return inflow.role->drown_out ? 1.0 : 0.0; }},
        {&Totals::reactant_carbon, Flow::in_gross, carbon},
        {&Totals::bromine_handled, Flow::in_gross, bromine_handled},
        {&Totals::bromine_carried, Flow::in_gross, bromine_carried},
    };
    const auto inflows = route_->inflows();
    for (const auto& [member, flow, test] : definitions) {
        Row row{member, flow, {}};
        for (std::size_t i = 0; i < inflows.size(); ++i) {
            if (inflows[i].fed_by >= 0) continue; // an intermediate is no input of the route
            if (const double counted = test(inflows[i]); counted != 0.0)
                row.entries.push_back({static_cast<int>(i), counted});
        }
        rows_.push_back(std::move(row));
    }
    Row waste{&Totals::waste, Flow::out, {}};
    for (int i = 0; i < route_->outflow_count(); ++i)
        waste.entries.push_back({i, 1.0});
    rows_.push_back(std::move(waste));
}

void TotalsMap::add_equation_totals(const NetEquation& net) {
    const Substance& product = *route_->route().product;
    const auto mass = [](const std::vector<NetEquation::Part>& parts) {
        double sum = 0.0;
        for (const auto& part : parts)
            sum += part.moles * part.substance->molar_mass;
        return sum;
    };
    constants_.formula_product = product.molar_mass;
    constants_.formula_inputs = mass(net.inputs);
    constants_.formula_inputs_gross = mass(net.gross_inputs);
    for (const Coproduct& coproduct : route_->route().coproducts)
        for (const auto& part : net.outputs)
            if (part.substance == coproduct.substance)
                constants_.formula_coproducts += part.moles * part.substance->molar_mass;
    if (route_->route().coproducts.empty()) constants_.formula_coproducts = unknown_total;

    struct ElementTotals {
        int element;
        double Totals::*product;
        double Totals::*inputs;
    };
    const std::array<ElementTotals, 4> elements{{{6, &Totals::carbon_product, &Totals::carbon_inputs},
                                                 {35, &Totals::bromine_product, &Totals::bromine_inputs},
                                                 {7, &Totals::nitrogen_product, &Totals::nitrogen_inputs},
                                                 {17, &Totals::chlorine_product, &Totals::chlorine_inputs}}};
    for (const ElementTotals& entry : elements) {
        const int atoms = atoms_of(product.formula, entry.element);
        constants_.*entry.product = atoms > 0 ? atoms : unknown_total;
        for (const auto& part : net.inputs)
            constants_.*entry.inputs += part.moles * atoms_of(part.substance->formula, entry.element);
    }
}

void TotalsMap::add_effluents() {
    for (const FlatStream& stream : route_->streams()) {
        if (stream.kind != StreamKind::liquid && stream.kind != StreamKind::residue) continue;
        const std::vector<const Substance*>& substances = route_->steps()[at(stream.step)].substances;
        const auto water = std::find_if(substances.begin(), substances.end(),
                                        [](const Substance* substance) { return is_water(*substance); });
        if (water == substances.end()) continue;
        const int first = stream.first_outflow;
        effluents_.push_back({first, first + static_cast<int>(substances.size()),
                              first + static_cast<int>(water - substances.begin())});
    }
}

void TotalsMap::add_utilities() {
    // By step, NaN where no stage states it: one silent step makes the sum a guess.
    const auto by_step = [this](auto read) {
        std::vector<double> sums;
        for (const Step& step : route_->route().steps) {
            double sum = unknown_total;
            for (const Stage& stage : step.stages)
                if (const std::optional<double> value = read(stage))
                    sum = (std::isnan(sum) ? 0.0 : sum) + *value;
            sums.push_back(sum);
        }
        return sums;
    };
    energy_ = by_step([](const Stage& stage) {
        return stage.energy ? std::optional(stage.energy->in(unit::kJ)) : std::nullopt;
    });
    cooling_water_ = by_step([](const Stage& stage) {
        return stage.cooling_water ? std::optional(stage.cooling_water->in(unit::mL)) : std::nullopt;
    });
    const std::vector<double> times = by_step([](const Stage& stage) {
        return stage.time ? std::optional(stage.time->in(unit::h)) : std::nullopt;
    });
    constants_.time = std::accumulate(times.begin(), times.end(), 0.0);
    const std::vector<double> reaction_times = by_step([](const Stage& stage) {
        return stage.time && stage.phase == Phase::reaction ? std::optional(stage.time->in(unit::h))
                                                            : std::nullopt;
    });
    reaction_hours_ = reaction_times.size() > 1 ? unknown_total : reaction_times.front();
}

void TotalsMap::add_volumes() {
    reaction_litres_ = constants_.volume_hours = constants_.largest_volume = unknown_total;
    if (route_->steps().size() > 1) return;
    double reaction = 0.0, running = 0.0, largest = 0.0;
    const Step& step = route_->route().steps.front();
    int slot = 0;
    for (const Stage& stage : step.stages) {
        for (const Charge& charge : stage.charges) {
            const double grams = route_->nominal().charged[at(slot++)];
            const Substance::Phase phase = charge.material->components.front().substance->phase;
            // Solids are taken to dissolve without adding volume, gases to pass through.
            if (charge.material->is_neat() && phase != Substance::Phase::liquid) continue;
            const double volume =
                charge.material->density ? grams / *charge.material->density / 1000.0 : unknown_total;
            if (stage.phase == Phase::reaction) reaction += volume;
            running += volume;
        }
        largest = std::max(largest, std::isnan(running) ? unknown_total : running);
        if (std::isnan(running)) largest = unknown_total;
        const bool emptied =
            std::any_of(stage.separations.begin(), stage.separations.end(),
                        [](const Separation& separation) { return !separation.gives_vapour(); });
        if (emptied) running = 0.0;
    }
    reaction_litres_ = reaction > 0.0 || std::isnan(reaction) ? reaction : unknown_total;
    constants_.volume_hours = reaction_litres_ * reaction_hours_;
    constants_.largest_volume = largest > 0.0 || std::isnan(largest) ? largest : unknown_total;
}

} // namespace routeweigh
