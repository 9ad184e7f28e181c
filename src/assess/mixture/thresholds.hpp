// SPDX-License-Identifier: MIT
// Hazards for which each ingredient counts by itself: the mixture takes the most severe category for which
// one of them reaches its limit, and shares are never added up.
#pragma once

#include "assess/mixture/mixture_rules.hpp"
#include "assess/mixture/resolved_mixture.hpp"
#include "assess/mixture/result.hpp"

#include <functional>
#include <string_view>
#include <vector>

namespace routeweigh {

// An ingredient against its limit for one category of the mixture.
struct ThresholdPart {
    const ResolvedIngredient* ingredient = nullptr;
    const GhsEntry* entry = nullptr; // of the class; nullptr where only a specific limit names the class
    MixturePart part;
    std::string statement;
    bool met = false;
};

// All ingredients that could give the mixture this category.
std::vector<ThresholdPart> threshold_parts(const ThresholdEndpoint& endpoint, std::string_view category,
                                           const ResolvedMixture& mixture, const ThresholdLimits& limits);

// Judges one endpoint of the limits file. `name_statement` may refine the statement of the deciding category
// from the parts that met their limit; without it a statement that they share counts.
using NameStatement = std::function<void(const std::vector<ThresholdPart>& met, MixtureResult& result)>;
void judge_threshold(std::string_view endpoint_id, std::string_view title, const ResolvedMixture& mixture,
                     const MixtureRules& rules, std::vector<MixtureResult>& results,
                     const NameStatement& name_statement = {});

} // namespace routeweigh
