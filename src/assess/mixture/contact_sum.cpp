// SPDX-License-Identifier: MIT
#include "assess/mixture/contact_sum.hpp"

#include "assess/mixture/specific_limit.hpp"

#include <algorithm>

namespace routeweigh {

bool counts(const ResolvedIngredient& ingredient, double cut_off, std::string_view severe_class,
            std::string_view mild_class) {
    for (const std::string_view hazard_class : {severe_class, mild_class})
        if (const ConcentrationBand* band = lowest_band(ingredient, hazard_class))
            cut_off = std::min(cut_off, band->min_percent);
    return reaches(ingredient.percent, cut_off);
}

bool adds_up(const ResolvedIngredient& ingredient, std::string_view severe_class,
             std::string_view mild_class) {
    return ingredient.additive || lowest_band(ingredient, severe_class) != nullptr ||
           lowest_band(ingredient, mild_class) != nullptr;
}

std::optional<MixtureTest> ph_test(const ResolvedMixture& mixture, const PhLimits& limits,
                                   std::string_view severe_class, std::string_view mild_class) {
    if (!mixture.facts.ph) return std::nullopt;
    const double ph = *mixture.facts.ph;
    const bool acid = ph < 7;
    MixtureTest test;
    test.kind = TestKind::value;
    test.what = acid ? "pH at most" : "pH at least";
    test.category = "1";
    test.value = ph;
    test.limit = acid ? limits.acid : limits.base;
    test.source = limits.source;
    test.met = acid ? ph <= limits.acid : ph >= limits.base;
    if (!test.met) return test;
    // Specific limits of what makes the pH are data on its solutions and come first.
    const AcidBase other = acid ? AcidBase::base : AcidBase::acid;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        if (ingredient.nature == AcidBase::neither || ingredient.nature == other) continue;
        const ConcentrationBand* band = lowest_band(ingredient, severe_class);
        if (band == nullptr) band = lowest_band(ingredient, mild_class);
        if (band == nullptr) continue;
        MixturePart part;
        part.substance = ingredient.substance;
        part.percent = ingredient.percent;
        part.divisor = band->min_percent;
        part.specific = true;
        part.remark = "its specific limits account for the pH";
        test.parts.push_back(part);
        test.met = false;
        test.besides = "set aside";
    }
    return test;
}

void add_test(MixtureResult& result, MixtureTest test, std::string_view hazard_class,
              std::string_view statement) {
    if (test.met && !result.classified()) {
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = hazard_class;
        result.category = test.category;
        result.statement = statement;
        result.specific = std::any_of(test.parts.begin(), test.parts.end(),
                                      [](const MixturePart& part) { return part.specific; });
    }
    result.tests.push_back(std::move(test));
}

} // namespace routeweigh
