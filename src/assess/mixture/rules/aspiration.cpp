// SPDX-License-Identifier: MIT
// Aspiration: thin liquids that, once swallowed, run into the lungs.
#include "assess/mixture/rules/rules.hpp"

#include <fmt/format.h>

namespace routeweigh::mixture_rules {
namespace {

MixtureTest sum_of(const ResolvedMixture& mixture, const AspirationCategory& category) {
    MixtureTest test;
    test.kind = TestKind::weighted_sum;
    test.what = "ingredients of an aspiration hazard";
    test.category = category.category;
    test.limit = category.sum;
    test.unit = "%";
    test.source = category.source;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        const GhsEntry* entry = ingredient.entry_of("Asp. Tox.");
        if (entry == nullptr || ingredient.unknown_for("aspiration") ||
            !reaches(ingredient.percent, category.cut_off))
            continue;
        if (entry->category > category.category) continue; // category 2 does not make category 1
        MixturePart part;
        part.substance = ingredient.substance;
        part.percent = ingredient.percent;
        part.factor = 1;
        part.term = ingredient.percent;
        part.hazard_class = entry->hazard_class;
        part.category = entry->category;
        test.value += part.term;
        test.parts.push_back(part);
    }
    test.met = !test.parts.empty() && reaches(test.value, test.limit);
    return test;
}

void judge_aspiration(const ResolvedMixture& mixture, const MixtureRules& rules,
                      std::vector<MixtureResult>& results) {
    MixtureResult result;
    result.endpoint = "aspiration";
    result.title = "Aspiration";
    result.unknown_percent = mixture.unknown_percent("aspiration");
    // Only liquids run into the lungs; but that nobody stated the phase excuses nothing.
    if (mixture.phase == Substance::Phase::gas ||
        (mixture.phase == Substance::Phase::solid && !mixture.phase_assumed)) {
        results.push_back(std::move(result));
        return;
    }
    for (const AspirationCategory& category : rules.limits.aspiration) {
        MixtureTest test = sum_of(mixture, category);
        if (test.parts.empty()) continue;
        const auto& viscosity = mixture.facts.viscosity;
        MixtureTest thin;
        thin.kind = TestKind::value;
        thin.what = "kinematic viscosity at 40 \u00B0C at most";
        thin.category = category.category;
        thin.limit = category.viscosity;
        thin.unit = "mm\u00B2/s";
        thin.source = category.source;
        thin.value = viscosity.value_or(0);
        thin.met = !viscosity || !is_above(*viscosity, category.viscosity);
        const bool met = test.met && thin.met;
        result.tests.push_back(std::move(test));
        if (viscosity) result.tests.push_back(std::move(thin));
        if (!met) continue;
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = "Asp. Tox.";
        result.category = category.category;
        result.statement = category.statement;
        if (!viscosity)
            result.notes.push_back(fmt::format("the viscosity is not stated; it is taken to be at most {:g} "
                                               "mm\u00B2/s at 40 \u00B0C",
                                               category.viscosity));
        break;
    }
    if (!result.tests.empty() && mixture.percent_of("water") > 0)
        result.notes.push_back("where layers separate, each is a mixture of its own");
    results.push_back(std::move(result));
}

} // namespace

const MixtureRule aspiration{"aspiration", "GHS chapter 3.10", judge_aspiration};

} // namespace routeweigh::mixture_rules
