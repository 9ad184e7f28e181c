// SPDX-License-Identifier: MIT
// Hazard to water, acute and chronic: weighted sums of shares against 25 %, the most severe category first.
//
// Ingredients of which only the toxicity is known are taken together as one, of the toxicity
//
//   sum C_i / LC_mixture = sum of (C_i / LC_i)      chronic: a tenth of the NOEC where not rapidly degradable
#include "assess/mixture/aquatic_ingredient.hpp"
#include "assess/mixture/limits.hpp"
#include "assess/mixture/rules/rules.hpp"

namespace routeweigh::mixture_rules {
namespace {

struct Contributor {
    const Substance* substance = nullptr; // nullptr: those with data only, as one
    double percent = 0;
    AquaticClass aquatic;
};

bool has_data_only(AquaticKind kind, const ResolvedIngredient& ingredient) {
    return !aquatic_class(kind, ingredient) && aquatic_toxicity(kind, ingredient).has_value();
}

bool is_unknown(AquaticKind kind, const ResolvedIngredient& ingredient, std::string_view endpoint) {
    return ingredient.unknown_for(endpoint) && !aquatic_toxicity(kind, ingredient);
}

std::vector<Contributor> contributors(AquaticKind kind, std::string_view endpoint,
                                      const ResolvedMixture& mixture, const AquaticLimits& limits) {
    std::vector<Contributor> found;
    double percent = 0, doses = 0;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        if (is_unknown(kind, ingredient, endpoint)) continue;
        if (has_data_only(kind, ingredient)) {
            const bool slow = kind == AquaticKind::chronic && !ingredient.facts.aquatic.rapidly_degradable;
            percent += ingredient.percent;
            doses += ingredient.percent / (*aquatic_toxicity(kind, ingredient) * (slow ? 0.1 : 1.0));
        } else if (const auto aquatic = aquatic_class(kind, ingredient)) {
            const double cut_off =
                aquatic->category == 1 ? limits.cut_off_1 / aquatic->m_factor : limits.cut_off_other;
            if (reaches(ingredient.percent, cut_off))
                found.push_back({ingredient.substance, ingredient.percent, *aquatic});
        }
    }
    // The tenth above makes them comparable with limits for what degrades rapidly.
    if (doses > 0)
        if (const auto aquatic = aquatic_class(kind, percent / doses, true))
            found.push_back({nullptr, percent, *aquatic});
    return found;
}

MixtureTest sum_of(const AquaticCategory& category, const std::vector<Contributor>& all,
                   const AquaticLimits& limits, std::string_view what) {
    MixtureTest test;
    test.kind = TestKind::weighted_sum;
    test.what = what;
    test.category = category.category;
    test.limit = limits.sum;
    test.unit = "%";
    test.source = limits.source;
    for (const Contributor& contributor : all) {
        const auto index = static_cast<std::size_t>(contributor.aquatic.category - 1);
        if (contributor.aquatic.category < 1 || index >= category.weights.size()) continue;
        const bool multiplied = category.with_m_factor && contributor.aquatic.category == 1;
        MixturePart part;
        part.substance = contributor.substance;
        part.percent = contributor.percent;
        part.factor = category.weights[index] * (multiplied ? contributor.aquatic.m_factor : 1.0);
        part.term = part.factor * part.percent;
        part.hazard_class = contributor.aquatic.hazard_class;
        part.specific = multiplied && contributor.aquatic.m_given;
        if (multiplied && !contributor.aquatic.m_given) part.remark = "no M-factor in its entry, 1 taken";
        test.value += part.term;
        test.parts.push_back(part);
    }
    test.met = !test.parts.empty() && reaches(test.value, test.limit);
    return test;
}

MixtureResult judge_kind(AquaticKind kind, const ResolvedMixture& mixture, const AquaticLimits& limits) {
    const bool acute = kind == AquaticKind::acute;
    MixtureResult result;
    result.endpoint = acute ? "aquatic_acute" : "aquatic_chronic";
    result.title = acute ? "Hazard to water, acute" : "Hazard to water, chronic";
    result.unknown_percent = mixture.unstated_percent;
    for (const ResolvedIngredient& ingredient : mixture.ingredients)
        if (is_unknown(kind, ingredient, result.endpoint)) result.unknown_percent += ingredient.percent;
    const std::vector<Contributor> all = contributors(kind, result.endpoint, mixture, limits);
    for (const AquaticCategory& category : acute ? limits.acute : limits.chronic) {
        MixtureTest test = sum_of(category, all, limits, acute ? "acute sum" : "chronic sum");
        if (test.parts.empty()) continue;
        const bool met = test.met;
        result.tests.push_back(std::move(test));
        if (!met) continue;
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = acute ? "Aquatic Acute" : "Aquatic Chronic";
        result.category = category.category;
        result.statement = category.statement;
        break;
    }
    return result;
}

void judge_aquatic(const ResolvedMixture& mixture, const MixtureRules& rules,
                   std::vector<MixtureResult>& results) {
    if (!rules.limits.aquatic.covered) {
        results.push_back(not_covered("aquatic_acute", "Hazard to water, acute"));
        results.push_back(not_covered("aquatic_chronic", "Hazard to water, chronic"));
        return;
    }
    results.push_back(judge_kind(AquaticKind::acute, mixture, rules.limits.aquatic));
    results.push_back(judge_kind(AquaticKind::chronic, mixture, rules.limits.aquatic));
}

} // namespace

const MixtureRule aquatic{"aquatic", "GHS chapter 4.1", judge_aquatic};

} // namespace routeweigh::mixture_rules
