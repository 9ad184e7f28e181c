// SPDX-License-Identifier: MIT
// A route laid out for the bench: what every paper of an experiment reads, worked out once.
//
// Amounts are for one run of each step as it is written: one pot. Papers for a class multiply.
#pragma once

#include "assess/assessment.hpp"
#include "assess/bench/bench_rules.hpp"
#include "assess/bench/caution_list.hpp"
#include "assess/bench/glassware.hpp"
#include "assess/bench/stage_facts.hpp"
#include "assess/streams/route_waste.hpp"

#include <optional>
#include <vector>

namespace routeweigh::bench {

struct BenchStage {
    StageFacts facts;
    std::optional<Vessel>
        vessel; ///< that the stage is run in; none on a filter, in a dish or where a gas is charged
    std::vector<StageCaution> cautions;
};

struct BenchStep {
    int index = 0;
    const Step* step = nullptr;
    std::vector<Reagent> reagents;
    Theory theory;
    std::vector<BenchStage> stages;
    std::vector<const streams::StreamAdvice*> streams; ///< that leave this step
    const streams::QuenchPlan* quench = nullptr;
    std::vector<double> cylinders; ///< sizes to measure the liquids with, mL, ascending
    bool pipettes = false;         ///< some liquid is less than a cylinder measures well
};

/// Stays where it was made, for its parts point at each other. Route and rules must outlive it.
class Experiment {
  public:
    Experiment(const Assessment& assessment, const BenchRules& rules);
    Experiment(const Experiment&) = delete;
    Experiment& operator=(const Experiment&) = delete;

    const Assessment& assessment() const { return *assessment_; }
    const Route& route() const { return assessment_->route(); }
    const BenchRules& rules() const { return *rules_; }
    const std::vector<BenchStep>& steps() const { return steps_; }
    const streams::RouteWaste& waste() const { return waste_; }
    const MixtureClassification& bottle(const Material& material) const { return bottles_.of(material); }
    /// Of what a step makes, pure: it is weighed and handed in, so its hazards are on the bench too.
    const MixtureClassification& product(const BenchStep& step) const {
        return bottles_.of(rules_->streams.catalogue.neat(*step.step->product));
    }

  private:
    const Assessment* assessment_;
    const BenchRules* rules_;
    mutable Bottles bottles_;
    streams::RouteWaste waste_;
    std::vector<BenchStep> steps_;
};

} // namespace routeweigh::bench
