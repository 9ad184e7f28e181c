// SPDX-License-Identifier: MIT
// Irritation of the airways and drowsiness (single exposure, category 3): each effect is summed by itself.
#include "assess/mixture/contact_sum.hpp"
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/specific_limit.hpp"

#include <algorithm>

namespace routeweigh::mixture_rules {
namespace {

constexpr std::string_view single_exposure = "STOT SE";

// The lowest specific limit of this effect, or nullptr.
const ConcentrationBand* band_of(const ResolvedIngredient& ingredient, std::string_view statement) {
    const ConcentrationBand* lowest = nullptr;
    each_band(ingredient, single_exposure, [&](const ConcentrationBand& band) {
        if (band.statement == statement && (lowest == nullptr || band.min_percent < lowest->min_percent))
            lowest = &band;
    });
    return lowest;
}

std::optional<ContactLimit> limit_of(const ResolvedIngredient& ingredient, std::string_view endpoint,
                                     std::string_view statement, const TransientEffectLimits& limits) {
    if (ingredient.unknown_for(endpoint)) return std::nullopt;
    if (const ConcentrationBand* band = band_of(ingredient, statement)) {
        if (!reaches(ingredient.percent, std::min(limits.cut_off, band->min_percent))) return std::nullopt;
        return ContactLimit{band->min_percent, true, single_exposure, "3"};
    }
    if (!reaches(ingredient.percent, limits.cut_off)) return std::nullopt;
    for (const GhsEntry& entry : ingredient.ghs())
        if (entry.hazard_class == single_exposure && entry.statement == statement)
            return ContactLimit{limits.sum, false, single_exposure, "3"};
    return std::nullopt;
}

MixtureResult judge_effect(std::string_view endpoint, std::string_view title, std::string_view what,
                           std::string_view statement, const ResolvedMixture& mixture,
                           const TransientEffectLimits& limits) {
    MixtureResult result;
    result.endpoint = endpoint;
    result.title = title;
    result.unknown_percent = mixture.unknown_percent(endpoint);
    MixtureTest test =
        ratio_test(mixture, what, "3", limits.source, [&](const ResolvedIngredient& ingredient) {
            return limit_of(ingredient, endpoint, statement, limits);
        });
    if (!test.parts.empty()) add_test(result, std::move(test), single_exposure, statement);
    return result;
}

void judge_transient(const ResolvedMixture& mixture, const MixtureRules& rules,
                     std::vector<MixtureResult>& results) {
    const TransientEffectLimits& limits = rules.limits.transient;
    results.push_back(judge_effect("airway_irritation", "Irritation of the airways",
                                   "ingredients that irritate the airways", "H335", mixture, limits));
    results.push_back(
        judge_effect("drowsiness", "Drowsiness", "ingredients that make drowsy", "H336", mixture, limits));
}

} // namespace

const MixtureRule transient_effects{"transient_effects", "GHS chapter 3.8, category 3", judge_transient};

} // namespace routeweigh::mixture_rules
