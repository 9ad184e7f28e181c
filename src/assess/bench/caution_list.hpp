// SPDX-License-Identifier: MIT
// Cautions of a stage, few and specific: each a rule that reads what the pot holds and does.
//
// A new rule is a function and a line in the list. What a rule finds is common practice, no source, unless
// its words say otherwise; local rules and the data sheets go before.
#pragma once

#include "assess/bench/stage_facts.hpp"
#include "assess/streams/quench_plan.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::bench {

struct StageCaution {
    std::string_view rule; ///< id of the rule: "condenser"
    std::string words;     ///< one or two sentences
};

/// What a rule may look at.
struct StageView {
    const StageFacts& facts;
    Bottles& bottles;
    const streams::QuenchPlan& quench; ///< of the step
};

/// In order of urgency.
std::vector<StageCaution> cautions_of(const StageView& view);

} // namespace routeweigh::bench
