// SPDX-License-Identifier: MIT
// Mutagens, carcinogens, reproductive toxicants, and what passes into mother's milk. Shares are not added up.
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/thresholds.hpp"

#include <algorithm>

namespace routeweigh::mixture_rules {
namespace {

// H350i holds for the mixture only where each that decides does its harm by breathing alone.
void name_cancer(const std::vector<ThresholdPart>& met, MixtureResult& result) {
    const bool inhaled_only = std::all_of(met.begin(), met.end(), [](const ThresholdPart& part) {
        return part.statement.find('i') != std::string::npos;
    });
    if (!inhaled_only) result.statement = result.statement.substr(0, 4);
}

struct Letters {
    bool fertility = false, child = false, unspecified = false;

    void add(std::string_view statement) {
        const bool f = statement.find_first_of("Ff") != std::string_view::npos;
        const bool d = statement.find_first_of("Dd") != std::string_view::npos;
        fertility = fertility || f;
        child = child || d;
        unspecified = unspecified || !(f || d);
    }
};

std::string capitals(std::string_view statement) {
    std::string kept(statement.substr(0, 4));
    for (const char letter : statement.substr(4))
        if (letter == 'F' || letter == 'D') kept += letter;
    return kept;
}

// Letters of those that decide are joined: H360F and H360D give H360FD; what category 2 adds is a small
// letter: H360D and H361f give H360Df. One without letters leaves the effect open.
void name_reproduction(const std::vector<ThresholdPart>& met, const std::vector<ThresholdPart>& suspected,
                       MixtureResult& result) {
    Letters known, suspect;
    const bool serious = result.statement.starts_with("H360");
    for (const ThresholdPart& part : met) {
        if (serious) {
            known.add(capitals(part.statement).size() > 4 ? capitals(part.statement) : part.statement);
            if (part.statement.size() > 4) suspect.add(part.statement);
        } else {
            known.add(part.statement);
        }
    }
    for (const ThresholdPart& part : suspected)
        if (part.met) suspect.add(part.statement);
    result.statement = serious ? "H360" : "H361";
    if (known.unspecified) return;
    if (known.fertility) result.statement += serious ? 'F' : 'f';
    if (known.child) result.statement += serious ? 'D' : 'd';
    if (serious && suspect.fertility && !known.fertility) result.statement += 'f';
    if (serious && suspect.child && !known.child) result.statement += 'd';
}

void judge_lasting_harm(const ResolvedMixture& mixture, const MixtureRules& rules,
                        std::vector<MixtureResult>& results) {
    judge_threshold("mutagenicity", "Changes of the germ line", mixture, rules, results);
    judge_threshold("carcinogenicity", "Cancer", mixture, rules, results, name_cancer);
    judge_threshold("reproductive_toxicity", "Fertility and the unborn child", mixture, rules, results,
                    [&](const std::vector<ThresholdPart>& met, MixtureResult& result) {
                        const auto* endpoint = rules.limits.thresholds.endpoint("reproductive_toxicity");
                        name_reproduction(
                            met, threshold_parts(*endpoint, "2", mixture, rules.limits.thresholds), result);
                    });
    judge_threshold("lactation", "Effects by way of mother's milk", mixture, rules, results);
}

} // namespace

const MixtureRule lasting_harm{"lasting_harm", "GHS chapters 3.5 to 3.7", judge_lasting_harm};

} // namespace routeweigh::mixture_rules
