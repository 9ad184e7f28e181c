// SPDX-License-Identifier: MIT
#include "assess/bench/experiment.hpp"

#include "assess/bench/addition_order.hpp"
#include "assess/bench/cold_bath.hpp"

#include <algorithm>
#include <set>

namespace routeweigh::bench {
namespace {

VesselKind kind_of(const StageFacts& facts) {
    if (facts.separates(SeparationMethod::extraction)) return VesselKind::separating_funnel;
    if (facts.refluxes()) return VesselKind::round_flask; // carries the condenser
    if (facts.has_role("recrystallisation solvent")) return VesselKind::conical_flask;
    if (facts.is(Phase::reaction)) return facts.warm ? VesselKind::round_flask : VesselKind::conical_flask;
    if (facts.separates(SeparationMethod::evaporation) || facts.separates(SeparationMethod::distillation))
        return VesselKind::round_flask;
    return VesselKind::beaker;
}

std::optional<Vessel> vessel_for(const StageFacts& facts, const Glassware& glassware) {
    if (facts.on_filter || only_dries(*facts.stage) || facts.takes_in_gas() || facts.volume <= 0) return {};
    const bool foams = std::any_of(facts.gases.begin(), facts.gases.end(), [&](const StageGas& gas) {
        return gas.litres * 1000 > facts.volume; // more gas than liquid
    });
    return glassware.fit(kind_of(facts), facts.volume, foams);
}

void measure_liquids(BenchStep& step, const Glassware& glassware) {
    std::set<double> sizes;
    for (const Reagent& reagent : step.reagents) {
        if (!reagent.millilitres) continue;
        // Portions are measured one by one.
        const double portion = *reagent.millilitres / std::max(1, reagent.charge->amount.repeat);
        if (portion < glassware.pipette_below)
            step.pipettes = true;
        else if (const Vessel cylinder = glassware.fit(VesselKind::cylinder, portion); cylinder.size > 0)
            sizes.insert(cylinder.size);
    }
    step.cylinders.assign(sizes.begin(), sizes.end());
}

} // namespace

Experiment::Experiment(const Assessment& assessment, const BenchRules& rules)
    : assessment_(&assessment), rules_(&rules), bottles_(rules.mixture),
      waste_(streams::assess_waste(assessment.route(), rules.streams)) {
    const FlatRoute& flat = assessment.flat();
    const Inputs& inputs = flat.nominal();
    steps_.resize(route().steps.size());
    for (std::size_t s = 0; s < steps_.size(); ++s) {
        BenchStep& step = steps_[s];
        step.index = static_cast<int>(s);
        step.step = &route().steps[s];
        step.reagents = reagents_of(flat, inputs, step.index);
        step.theory = theory_of(flat, inputs, assessment.evaluation(), step.index);
        step.quench = &waste_.quenches[s];
        for (const streams::StreamAdvice& advice : waste_.streams)
            if (advice.stream.step == step.index) step.streams.push_back(&advice);
        for (StageFacts& facts :
             stages_of(flat, inputs, assessment.evaluation(), step.index, step.reagents, rules)) {
            put_in_order(facts, bottles_);
            BenchStage stage{std::move(facts), {}, {}};
            stage.vessel = vessel_for(stage.facts, rules.glassware);
            stage.cautions = cautions_of({stage.facts, bottles_, *step.quench});
            step.stages.push_back(std::move(stage));
        }
        measure_liquids(step, rules.glassware);
    }
}

} // namespace routeweigh::bench
