// SPDX-License-Identifier: MIT
// Classes that a substance brings into a mixture from a share on: harm to the ozone layer, disruption of
// hormones, and what stays in nature for long.
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/thresholds.hpp"

namespace routeweigh::mixture_rules {
namespace {

struct Listed {
    std::string_view endpoint, title;
};
constexpr Listed listed[] = {
    {"ozone", "Harm to the ozone layer"},
    {"hormones_health", "Disruption of hormones, people"},
    {"hormones_environment", "Disruption of hormones, environment"},
    {"persistent_bioaccumulative", "Persistent, bioaccumulative and toxic"},
    {"very_persistent_bioaccumulative", "Very persistent and very bioaccumulative"},
    {"persistent_mobile", "Persistent, mobile and toxic"},
    {"very_persistent_mobile", "Very persistent and very mobile"},
};

void judge_listed(const ResolvedMixture& mixture, const MixtureRules& rules,
                  std::vector<MixtureResult>& results) {
    for (const Listed& entry : listed)
        judge_threshold(entry.endpoint, entry.title, mixture, rules, results);
}

} // namespace

const MixtureRule listed_environment{"listed_environment", "GHS chapter 4.2; Regulation (EU) 2023/707",
                                     judge_listed};

} // namespace routeweigh::mixture_rules
