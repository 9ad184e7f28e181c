// SPDX-License-Identifier: MIT
#include "assess/bench/equipment.hpp"

#include "assess/bench/cold_bath.hpp"
#include "assess/bench/experiment.hpp"
#include "assess/pot_contents.hpp"
#include "base/index.hpp"
#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::bench {
namespace {

Equipment& item_named(std::vector<Equipment>& all, const std::string& name) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Equipment& one) { return one.name == name; });
    return found != all.end() ? *found : all.emplace_back(Equipment{name, {}, 0, 1});
}

void add_item(std::vector<Equipment>& all, const std::string& name, const std::string& use,
              double holds = 0) {
    Equipment& one = item_named(all, name);
    if (!use.empty()) add_once(one.uses, use);
    one.holds = std::max(one.holds, holds);
}

void add_vessel(std::vector<Equipment>& all, const Vessel& vessel, const std::string& use) {
    add_item(all, name_of(vessel), use, vessel.holds);
}

template<typename Test>
void add_where(std::vector<Equipment>& all, const BenchStep& step, const char* name, const Test& test) {
    for (const BenchStage& stage : step.stages)
        if (test(stage)) add_item(all, name, stage.facts.stage->title);
}

/// Also to boil something off, though the route need not say how hot that is.
bool is_heated(const BenchStage& stage) {
    return stage.vessel && (stage.facts.warm || boils_off(*stage.facts.stage));
}

/// nullptr where nothing has to cool.
const char* bath_name(ColdBath bath) {
    switch (bath) {
    case ColdBath::ice:
        return "ice bath";
    case ColdBath::salt:
        return "ice-salt bath";
    case ColdBath::dry_ice:
        return "dry ice bath";
    case ColdBath::none:
        break;
    }
    return nullptr;
}

/// The liquor is wanted and a spent salt stays behind: no suction, which would take the solvent off.
bool filters_off_salt(const BenchStage& stage) {
    return stage.facts.has_role("drying agent") && stage.facts.separates(SeparationMethod::filtration);
}

void add_apparatus(std::vector<Equipment>& all, const BenchStep& step) {
    const auto parts = [](SeparationMethod method) {
        return [method](const BenchStage& stage) { return stage.facts.separates(method); };
    };
    add_where(all, step, "reflux condenser with tubing, clamped",
              [](const BenchStage& stage) { return stage.facts.refluxes(); });
    add_where(all, step, "condenser for distilling with adapter and receiver, clamped",
              parts(SeparationMethod::distillation));
    add_where(all, step, "bath, mantle or plate to heat", is_heated);
    for (const BenchStage& stage : step.stages)
        if (const char* bath = bath_name(cold_bath(*step.step, *stage.facts.stage)))
            add_item(all, bath, stage.facts.stage->title);
    add_where(all, step, "thermometer",
              [](const BenchStage& stage) { return is_heated(stage) || is_held_cold(*stage.facts.stage); });
    add_where(all, step, "suction flask with filter funnel and paper that fits it",
              [](const BenchStage& stage) {
                  return stage.facts.separates(SeparationMethod::filtration) && !filters_off_salt(stage);
              });
    add_where(all, step, "funnel with fluted paper", filters_off_salt);
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

int Equipment::pieces(int students) const {
    return static_cast<int>(std::ceil(students * std::min(runs, 1.0) - 1e-9));
}

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
    const bool several = experiment.steps().size() > 1;
    for (const BenchStep& step : experiment.steps()) {
        const double runs = experiment.assessment().evaluation().steps[at(step.index)].scale;
        for (const Equipment& one : equipment_of(step, experiment.rules())) {
            const bool known = std::any_of(all.begin(), all.end(),
                                           [&](const Equipment& other) { return other.name == one.name; });
            Equipment& item = item_named(all, one.name);
            item.runs = known ? std::max(item.runs, runs) : runs;
            item.holds = std::max(item.holds, one.holds);
            for (const std::string& use : one.uses)
                add_once(item.uses, several ? step.step->id + ": " + use : use);
        }
    }
    return all;
}

} // namespace routeweigh::bench
