// SPDX-License-Identifier: MIT
#include "assess/bench/equipment.hpp"

#include "assess/bench/experiment.hpp"
#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::bench {
namespace {

constexpr double cold_until = 10; // degC; common practice, no source

void add_item(std::vector<Equipment>& all, std::string name, const std::string& use, double holds = 0) {
    auto found = std::find_if(all.begin(), all.end(), [&](const Equipment& one) { return one.name == name; });
    if (found == all.end()) found = all.insert(all.end(), Equipment{std::move(name), {}, 0});
    if (!use.empty()) add_once(found->uses, use);
    found->holds = std::max(found->holds, holds);
}

void add_vessel(std::vector<Equipment>& all, const Vessel& vessel, const std::string& use) {
    add_item(all, name_of(vessel), use, vessel.holds);
}

template<typename Test>
void add_where(std::vector<Equipment>& all, const BenchStep& step, const char* name, const Test& test) {
    for (const BenchStage& stage : step.stages)
        if (test(stage)) add_item(all, name, stage.facts.stage->title);
}

bool is_cold(const BenchStage& stage) {
    const auto& temperature = stage.facts.stage->temperature;
    return stage.vessel && temperature && temperature->celsius() <= cold_until;
}

bool is_hot(const BenchStage& stage) {
    return stage.vessel && stage.facts.warm;
}

void add_apparatus(std::vector<Equipment>& all, const BenchStep& step) {
    const auto parts = [](SeparationMethod method) {
        return [method](const BenchStage& stage) { return stage.facts.separates(method); };
    };
    add_where(all, step, "reflux condenser with tubing, clamped",
              [](const BenchStage& stage) { return stage.facts.refluxes(); });
    add_where(all, step, "condenser for distilling with adapter and receiver, clamped",
              parts(SeparationMethod::distillation));
    add_where(all, step, "bath, mantle or plate to heat", is_hot);
    add_where(all, step, "ice bath",
              [](const BenchStage& stage) { return is_cold(stage) || stage.facts.cools_before_filtering(); });
    add_where(all, step, "thermometer",
              [](const BenchStage& stage) { return is_hot(stage) || is_cold(stage); });
    add_where(all, step, "suction flask with filter funnel and paper that fits it",
              parts(SeparationMethod::filtration));
    add_where(all, step, "weighed dish to dry on", parts(SeparationMethod::drying));
}

void add_measures(std::vector<Equipment>& all, const BenchStep& step, const BenchRules& rules) {
    for (const double size : step.cylinders)
        add_item(all, fmt::format("{:g} mL measuring cylinder", size), "");
    if (step.pipettes)
        add_item(all, "graduated pipette with a filler",
                 fmt::format("less than {:g} mL", rules.glassware.pipette_below));
}

void add_for_streams(std::vector<Equipment>& all, const BenchStep& step, const BenchRules& rules) {
    for (const streams::StreamToNeutralise& one : step.quench->to_neutralise)
        if (one.usual_base() != nullptr) {
            // The room that gas needs is in the volume already.
            Vessel beaker =
                rules.glassware.fit(VesselKind::beaker, one.base.vessel * rules.glassware.most_full);
            beaker.holds = one.liquid;
            add_vessel(all, beaker, "neutralising " + one.stream);
        }
    for (const streams::StreamAdvice* advice : step.streams)
        if (advice->decision.outcome == streams::Decision::Outcome::trap)
            add_item(all, "gas trap", advice->stream.name);
}

} // namespace

std::vector<Equipment> equipment_of(const BenchStep& step, const BenchRules& rules) {
    std::vector<Equipment> all;
    for (const BenchStage& stage : step.stages)
        if (stage.vessel) add_vessel(all, *stage.vessel, stage.facts.stage->title);
    add_apparatus(all, step);
    add_measures(all, step, rules);
    add_for_streams(all, step, rules);
    return all;
}

std::vector<Equipment> equipment_of(const Experiment& experiment) {
    std::vector<Equipment> all;
    for (const BenchStep& step : experiment.steps())
        for (const Equipment& one : equipment_of(step, experiment.rules())) {
            const bool there = std::any_of(all.begin(), all.end(),
                                           [&](const Equipment& other) { return other.name == one.name; });
            if (!there) all.push_back(one);
        }
    return all;
}

} // namespace routeweigh::bench
