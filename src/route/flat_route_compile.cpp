// SPDX-License-Identifier: MIT
// Compiles a checked route: names become indices, amounts become grams, reactions become programmes with the
// basis that is optimal at the nominal amounts.
#include "base/index.hpp"
#include "route/charge.hpp"
#include "route/flat_route.hpp"
#include "route/reaction_graph.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <map>

namespace routeweigh {

class RouteCompiler {
  public:
    explicit RouteCompiler(FlatRoute& flat) : flat_(flat), route_(*flat.route_) {
        for (const ChargeSupply& supply : find_supplies(route_))
            fed_by_[{supply.step, supply.stage, supply.charge}] = supply.fed_by;
        plan_scale();
        for (std::size_t s = 0; s < route_.steps.size(); ++s)
            add_step(static_cast<int>(s));
        add_reuse();
    }

  private:
    void plan_scale() {
        int final_step = 0;
        for (std::size_t s = 0; s < route_.steps.size(); ++s)
            if (route_.steps[s].product == route_.product) final_step = static_cast<int>(s);
        std::vector<ScalePlan::Feed> feeds;
        for (const auto& [charge, maker] : fed_by_) {
            const std::pair<int, int> key{maker, charge[0]};
            if (feed_index_.try_emplace(key, static_cast<int>(feeds.size())).second)
                feeds.push_back({maker, charge[0]});
        }
        flat_.scale_ = ScalePlan(static_cast<int>(route_.steps.size()), final_step, std::move(feeds));
    }

    int local(FlatStep& flat, const Substance* substance) {
        const auto [found, fresh] = locals_.try_emplace(substance, static_cast<int>(flat.substances.size()));
        if (fresh) {
            flat.substances.push_back(substance);
            // A mixture without a formula takes part in no reaction; its amount is kept in g.
            flat.molar_mass.push_back(substance->has_formula() ? substance->molar_mass : 1.0);
        }
        return found->second;
    }

    void add_step(int index) {
        const Step& step = route_.steps[at(index)];
        FlatStep& flat = flat_.steps_.emplace_back();
        locals_.clear();
        flat.product = local(flat, step.product);
        number_substances(flat, step);
        add_streams(flat, index);
        flat.isolated_is_mass = step.isolated.mass.has_value();
        flat_.nominal_.isolated.push_back(flat.isolated_is_mass ? step.isolated.mass->in(unit::g)
                                                                : step.isolated.yield.value_or(1.0));
        flat.first_flask = flat_.flask_count_;
        flat_.flask_count_ += static_cast<int>(flat.substances.size());
        for (const Stage& stage : step.stages) {
            for (const Reaction& reaction : stage.reactions) {
                flat.partial_conversion = flat.partial_conversion || reaction.conversion < 1.0;
                if (reaction.equation.coefficient_of(step.product) < 0.0) flat.product_reacts = true;
            }
            for (const Charge& charge : stage.charges)
                if (charge.material->component_of(*step.product) != nullptr) flat.product_reacts = true;
        }

        double reference = std::numeric_limits<double>::quiet_NaN();
        try {
            reference = reference_moles(step);
        } catch (const ChargeError&) { // only needed for eq and mol %, where the checks have asked for it
        }
        // Two pots are carried along at nominal amounts, so that each stage is compiled for what it will
        // meet.
        std::vector<double> nominal(flat.substances.size(), 0.0);
        present_.assign(flat.substances.size(), false);
        for (std::size_t g = 0; g < step.stages.size(); ++g)
            add_stage(flat, index, static_cast<int>(g), reference, nominal);
        bool loss = false;
        for (std::size_t g = 0; g < flat.stages.size(); ++g) {
            const FlatStage& stage = flat.stages[g];
            flat.forms_after_loss = flat.forms_after_loss || (loss && stage.extents.changes(flat.product));
            const auto charged = flat_.inflows_.begin();
            if (stage.extents.changes(flat.product) ||
                std::any_of(charged + stage.first_inflow, charged + stage.last_inflow,
                            [&](const Inflow& inflow) { return inflow.local == flat.product; }))
                flat.stages_to_product = g + 1;
            for (const FlatSeparation& separation : stage.separations)
                loss = loss || separation.loss > 0.0;
        }
        flat.made_in_one = flat.stages_to_product > 0 && !flat.product_reacts && !flat.forms_after_loss &&
                           stays(flat.stages[flat.stages_to_product - 1], flat.product);
        flat_.prepare_caps(index);
    }

    /// No product leaves the stage but what is lost there.
    static bool stays(const FlatStage& stage, int product) {
        return std::find(stage.forming_gases.begin(), stage.forming_gases.end(), product) ==
                   stage.forming_gases.end() &&
               std::all_of(
                   stage.separations.begin(), stage.separations.end(),
                   [&](const FlatSeparation& separation) { return separation.leaves[at(product)] == 0.0; });
    }

    void number_substances(FlatStep& flat, const Step& step) {
        for (const Stage& stage : step.stages) {
            for (const Charge& charge : stage.charges)
                for (const Component& component : charge.material->components)
                    local(flat, component.substance);
            for (const Reaction& reaction : stage.reactions)
                for (const auto& part : reaction.equation.parts)
                    local(flat, part.substance);
        }
    }

    void add_streams(FlatStep& flat, int index) {
        const Step& step = route_.steps[at(index)];
        flat.first_stream = static_cast<int>(flat_.streams_.size());
        const auto stream = [&](const std::string& name, StreamKind kind) {
            for (int i = 0; i < flat.stream_count; ++i)
                if (flat_.streams_[at(flat.first_stream + i)].name == name) return i;
            flat_.streams_.push_back({index, name, kind, flat_.outflow_count_});
            flat_.outflow_count_ += static_cast<int>(flat.substances.size());
            return flat.stream_count++;
        };
        for (const Stage& stage : step.stages)
            for (const Separation& separation : stage.separations)
                stream(separation.to, separation.gives_vapour() ? StreamKind::vapour : StreamKind::liquid);
        flat.gas_stream = stream(step.gas, StreamKind::gas);
        flat.rest_stream = stream(step.rest, StreamKind::residue);
    }

    void add_stage(FlatStep& flat, int index, int number, double reference, std::vector<double>& amounts) {
        const Step& step = route_.steps[at(index)];
        const Stage& stage = step.stages[at(number)];
        FlatStage& result = flat.stages.emplace_back();
        std::vector<bool> unlimited(flat.substances.size(), false);
        result.first_inflow = static_cast<int>(flat_.inflows_.size());
        for (std::size_t c = 0; c < stage.charges.size(); ++c)
            add_charge(flat, index, number, static_cast<int>(c), reference, amounts, unlimited);
        result.last_inflow = static_cast<int>(flat_.inflows_.size());

        compile_reactions(flat, stage, result, amounts, unlimited);
        const std::vector<double> before = amounts;
        result.extents.react(amounts);
        for (int i = result.first_inflow; i < result.last_inflow; ++i)
            if (flat_.inflows_[at(i)].as_used) amounts[at(flat_.inflows_[at(i)].local)] = 0.0;
        for (const int gas : result.forming_gases)
            amounts[at(gas)] = std::min(amounts[at(gas)], before[at(gas)]);
        for (const Separation& separation : stage.separations) {
            FlatSeparation compiled = compile_separation(flat, step, separation);
            compiled.take_out(amounts, flat.molar_mass);
            result.separations.push_back(std::move(compiled));
        }
    }

    void add_charge(FlatStep& flat, int index, int number, int c, double reference,
                    std::vector<double>& amounts, std::vector<bool>& unlimited) {
        const Step& step = route_.steps[at(index)];
        const Charge& charge = step.stages[at(number)].charges[at(c)];
        const int slot = static_cast<int>(flat_.nominal_.charged.size());
        const double grams = charge.as_used ? 0.0 : grams_of(charge, reference);
        flat_.nominal_.charged.push_back(grams);
        const auto supply = fed_by_.find({index, number, c});
        const int maker = supply == fed_by_.end() ? -1 : supply->second;
        for (const Component& component : charge.material->components) {
            const Substance* substance = component.substance;
            const int place = local(flat, substance);
            Inflow inflow{};
            inflow.step = index;
            inflow.stage = number;
            inflow.charge = c;
            inflow.slot = slot;
            inflow.substance = substance;
            inflow.local = place;
            inflow.fraction = component.mass_fraction;
            inflow.moles_per_gram = 1.0 / flat.molar_mass[at(place)];
            flat_.nominal_.fractions.push_back(component.mass_fraction);
            inflow.role = charge.role;
            inflow.fed_by = maker;
            inflow.feed = maker < 0 ? -1 : feed_index_.at({maker, index});
            inflow.reactant =
                maker < 0 && charge.role->reactant && step.overall.coefficient_of(substance) < 0.0;
            inflow.neat = charge.material->components.size() == 1;
            inflow.carrier = component.carrier;
            inflow.as_used = charge.as_used;
            flat_.inflows_.push_back(inflow);
            amounts[at(place)] += grams * component.mass_fraction / flat.molar_mass[at(place)];
            present_[at(place)] = present_[at(place)] || grams > 0.0 || charge.as_used || maker >= 0;
            if (charge.as_used) {
                unlimited[at(place)] = true;
                amounts[at(place)] =
                    std::max(amounts[at(place)], 1.0); // present, in whatever amount is wanted
            }
        }
    }

    void compile_reactions(FlatStep& flat, const Stage& stage, FlatStage& result,
                           std::vector<double>& amounts, const std::vector<bool>& unlimited) {
        std::vector<PotReaction> reactions, full;
        for (const Reaction& reaction : stage.reactions) {
            PotReaction& pot = reactions.emplace_back();
            for (const auto& part : reaction.equation.parts)
                pot.change.emplace_back(local(flat, part.substance), part.coefficient);
            pot.conversion = reaction.conversion;
            pot.of = reaction.of == nullptr ? -1 : local(flat, reaction.of);
            pot.priority = reaction.priority;
            pot.split = reaction.split;
            full.push_back(pot);
            full.back().conversion = 1.0;
        }
        result.extents = Extents(reactions, amounts, present_, unlimited, flat.product);
        if (flat.partial_conversion)
            result.full.emplace_back(full, amounts, present_, unlimited, flat.product);
        if (result.extents.unbounded()) return; // refused by the route checks
        result.made = result.extents.made();
        std::vector<std::pair<int, double>> bromine;
        for (std::size_t s = 0; s < flat.substances.size(); ++s)
            if (flat.substances[s]->free_bromine > 0.0)
                bromine.emplace_back(static_cast<int>(s), flat.substances[s]->free_bromine);
        if (!bromine.empty() && (result.first_inflow < result.last_inflow || !stage.reactions.empty()))
            result.bromine.push_back(result.extents.ceiling(std::move(bromine), amounts));
        const Step& step = route_.steps[flat_.steps_.size() - 1];
        for (const int substance : result.made) {
            present_[at(substance)] = true;
            if (!result.extents.greatest_when_done(substance))
                result.ceilings.push_back({substance, result.extents.ceiling({{substance, 1.0}}, amounts)});
            const Substance* entry = flat.substances[at(substance)];
            const bool stays =
                std::find(step.dissolved.begin(), step.dissolved.end(), entry) != step.dissolved.end();
            if (entry->phase == Substance::Phase::gas && !stays && substance != flat.product)
                result.forming_gases.push_back(substance);
        }
    }

    FlatSeparation compile_separation(FlatStep& flat, const Step& step, const Separation& separation) {
        FlatSeparation result{0, std::vector<double>(flat.substances.size(), 0.0), separation.held,
                              separation.loss.value_or(0.0)};
        for (int i = 0; i < flat.stream_count; ++i)
            if (flat_.streams_[at(flat.first_stream + i)].name == separation.to) result.stream = i;
        if (separation.takes_volatiles) {
            for (std::size_t s = 0; s < flat.substances.size(); ++s)
                if (flat.substances[s]->phase != Substance::Phase::solid) result.leaves[s] = 1.0;
        } else {
            if (separation.lists_what_stays) std::fill(result.leaves.begin(), result.leaves.end(), 1.0);
            for (const Separation::Share& share : separation.shares)
                result.leaves[at(local(flat, share.substance))] =
                    separation.lists_what_stays ? 1.0 - share.fraction : share.fraction;
        }
        result.leaves[at(flat.product)] = 0.0;
        const bool formed = std::any_of(flat.stages.begin(), flat.stages.end(),
                                        [](const FlatStage& stage) { return stage.extents.makes_product(); });
        if (!separation.loss && formed && is_last_liquid(step, separation)) result.loss = 1.0;
        return result;
    }

    /// Where no separation declares a share of the loss, the last liquid stream takes all of it.
    static bool is_last_liquid(const Step& step, const Separation& asked) {
        const Separation* last = nullptr;
        for (const Stage& stage : step.stages)
            for (const Separation& separation : stage.separations) {
                if (separation.loss.value_or(0.0) > 0.0) return false;
                if (!separation.gives_vapour()) last = &separation;
            }
        return last == &asked;
    }

    void add_reuse() {
        for (const Reuse& reuse : route_.reuse) {
            FlatReuse result{0, {}};
            const FlatStep& from = flat_.steps_[at(reuse.from_step)];
            for (int i = 0; i < from.stream_count; ++i) {
                const FlatStream& stream = flat_.streams_[at(from.first_stream + i)];
                if (stream.name == reuse.from_stream)
                    for (std::size_t s = 0; s < from.substances.size(); ++s)
                        if (from.substances[s] == reuse.substance)
                            result.outflow = stream.first_outflow + static_cast<int>(s);
            }
            for (std::size_t i = 0; i < flat_.inflows_.size(); ++i)
                if (flat_.inflows_[i].step == reuse.to_step &&
                    flat_.inflows_[i].substance == reuse.substance && flat_.inflows_[i].fed_by < 0)
                    result.inflows.push_back(static_cast<int>(i));
            flat_.reuse_.push_back(std::move(result));
            flat_.nominal_.reused.push_back(reuse.fraction);
        }
    }

    FlatRoute& flat_;
    const Route& route_;
    std::map<std::array<int, 3>, int> fed_by_;
    std::map<std::pair<int, int>, int> feed_index_;
    // Of the step being compiled:
    std::map<const Substance*, int> locals_;
    std::vector<bool> present_; ///< charged or made so far
};

FlatRoute::FlatRoute(const Route& route) : route_(&route) {
    RouteCompiler(*this);
}

} // namespace routeweigh
