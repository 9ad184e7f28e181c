// SPDX-License-Identifier: MIT
// Harm to organs, after one exposure or after many. Shares are not added up. An organ is named only where all
// that decide harm the same one.
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/thresholds.hpp"

#include <algorithm>

namespace routeweigh::mixture_rules {
namespace {

void name_organ(const std::vector<ThresholdPart>& met, MixtureResult& result) {
    const auto target_of = [](const ThresholdPart& part) {
        return part.entry != nullptr ? std::string_view(part.entry->target) : std::string_view();
    };
    const std::string_view first = target_of(met.front());
    if (std::all_of(met.begin(), met.end(),
                    [&](const ThresholdPart& part) { return target_of(part) == first; }))
        result.target = first;
}

void judge_target_organs(const ResolvedMixture& mixture, const MixtureRules& rules,
                         std::vector<MixtureResult>& results) {
    judge_threshold("target_organ_single", "Harm to organs, single exposure", mixture, rules, results,
                    name_organ);
    judge_threshold("target_organ_repeated", "Harm to organs, repeated exposure", mixture, rules, results,
                    name_organ);
}

} // namespace

const MixtureRule target_organs{"target_organs", "GHS chapters 3.8 and 3.9", judge_target_organs};

} // namespace routeweigh::mixture_rules
