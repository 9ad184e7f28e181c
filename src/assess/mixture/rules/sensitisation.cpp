// SPDX-License-Identifier: MIT
// Sensitisation of the airways and of the skin, and the statement for people who are sensitised already.
//
// A mixture of no such class still names a sensitiser from a tenth of its limit on (EU: EUH208).
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/thresholds.hpp"

#include <algorithm>

namespace routeweigh::mixture_rules {
namespace {

struct Sensitiser {
    std::string_view endpoint, title;
};
constexpr Sensitiser sensitisers[] = {{"respiratory_sensitisation", "Sensitisation of the airways"},
                                      {"skin_sensitisation", "Sensitisation of the skin"}};

// Elicitation counts from a share of the general limit or of the specific one, whichever is lower.
double lowest_limit(const ThresholdEndpoint& endpoint, const ThresholdPart& part, bool gas) {
    double limit = part.part.divisor;
    if (part.entry != nullptr)
        for (const ThresholdRow& row : endpoint.rows)
            if (row.from == part.entry->category)
                limit = std::min(limit, gas && row.gas_percent ? *row.gas_percent : row.percent);
    return limit;
}

void add_elicitation(const ResolvedMixture& mixture, const MixtureRules& rules,
                     std::vector<MixtureResult>& results) {
    MixtureResult result;
    result.endpoint = "elicitation";
    result.title = "Reaction of people who are sensitised already";
    if (!rules.limits.elicitation_share) {
        result.outcome = MixtureOutcome::not_covered;
        results.push_back(std::move(result));
        return;
    }
    const double share = *rules.limits.elicitation_share;
    const bool gas = mixture.phase == Substance::Phase::gas;
    bool classified = false;
    MixtureTest test;
    test.kind = TestKind::each;
    test.what = "sensitisers below their limit";
    test.limit = 1;
    test.source = rules.limits.elicitation_source;
    for (const Sensitiser& sensitiser : sensitisers) {
        const ThresholdEndpoint* endpoint = rules.limits.thresholds.endpoint(sensitiser.endpoint);
        if (endpoint == nullptr) continue;
        const MixtureResult* found = find_result(results, sensitiser.endpoint);
        classified = classified || (found != nullptr && found->classified());
        for (ThresholdPart& part : threshold_parts(*endpoint, "1", mixture, rules.limits.thresholds)) {
            const double limit = share * lowest_limit(*endpoint, part, gas);
            if (part.met || !reaches(part.part.percent, limit)) continue;
            part.part.divisor = limit;
            part.part.term = part.part.percent / limit;
            test.value = std::max(test.value, part.part.term);
            test.met = true;
            test.parts.push_back(part.part);
        }
    }
    if (test.met) {
        if (classified)
            result.notes.push_back(
                "the mixture is classified as a sensitiser, so these are named on the label "
                "without a statement of their own");
        else
            result.supplemental.push_back("EUH208");
        result.tests.push_back(std::move(test));
    }
    results.push_back(std::move(result));
}

void judge_sensitisation(const ResolvedMixture& mixture, const MixtureRules& rules,
                         std::vector<MixtureResult>& results) {
    for (const Sensitiser& sensitiser : sensitisers)
        judge_threshold(sensitiser.endpoint, sensitiser.title, mixture, rules, results);
    add_elicitation(mixture, rules, results);
}

} // namespace

const MixtureRule sensitisation{"sensitisation", "GHS chapter 3.4; CLP Annex II, 2.8", judge_sensitisation};

} // namespace routeweigh::mixture_rules
