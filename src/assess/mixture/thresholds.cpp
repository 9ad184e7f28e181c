// SPDX-License-Identifier: MIT
#include "assess/mixture/thresholds.hpp"

#include "assess/mixture/rule.hpp"
#include "assess/mixture/specific_limit.hpp"

#include <algorithm>

namespace routeweigh {
namespace {

struct Limit {
    double percent = 0;
    bool specific = false;
    bool exclusive = false; // a specific limit that begins above its number
    std::string_view statement;
    std::string_view source;
};

// The general limit for an entry of this category; none where it gives no mixture this category.
std::optional<Limit> general_limit(const ThresholdEndpoint& endpoint, std::string_view from,
                                   std::string_view to, bool gas) {
    std::optional<Limit> lowest;
    for (const ThresholdRow& row : endpoint.rows) {
        if (row.to != to || (row.from != from && row.from != "any")) continue;
        const double percent = gas && row.gas_percent ? *row.gas_percent : row.percent;
        if (!lowest || percent < lowest->percent)
            lowest = Limit{percent, false, false, row.statement, row.source};
    }
    return lowest;
}

std::optional<Limit> specific_limit(const ResolvedIngredient& ingredient, const ThresholdEndpoint& endpoint,
                                    std::string_view to) {
    std::optional<Limit> lowest;
    each_band(ingredient, endpoint.hazard_class, [&](const ConcentrationBand& band) {
        if (band.category != (to == "none" ? std::string_view() : to) &&
            !(endpoint.categories.size() == 1)) // sensitisers: 1A and 1B both make category 1
            return;
        if (!lowest || band.min_percent < lowest->percent)
            lowest = Limit{band.min_percent, true, band.min_exclusive, band.statement,
                           "specific limit of the entry"};
    });
    return lowest;
}

} // namespace

std::vector<ThresholdPart> threshold_parts(const ThresholdEndpoint& endpoint, std::string_view category,
                                           const ResolvedMixture& mixture, const ThresholdLimits& limits) {
    std::vector<ThresholdPart> parts;
    const bool gas = mixture.phase == Substance::Phase::gas;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        if (ingredient.unknown_for(endpoint.id)) continue;
        const GhsEntry* entry = ingredient.entry_of(endpoint.hazard_class);
        const auto own = specific_limit(ingredient, endpoint, category);
        auto limit = own;
        if (entry != nullptr && (!own || !limits.specific_limits_may_lift)) {
            const auto general = general_limit(endpoint, entry->category, category, gas);
            if (general && (!own || general->percent < own->percent)) limit = general;
        }
        if (!limit) continue;
        ThresholdPart part;
        part.ingredient = &ingredient;
        part.entry = entry;
        // The statement of the entry, with its letters, where the mixture takes over its category.
        const bool keeps = entry != nullptr && (entry->category == category || category == "none");
        part.statement = keeps ? entry->statement : std::string(limit->statement);
        part.part.substance = ingredient.substance;
        part.part.percent = ingredient.percent;
        part.part.divisor = limit->percent;
        part.part.term = limit->percent > 0 ? ingredient.percent / limit->percent : 1.0;
        part.part.hazard_class = endpoint.hazard_class;
        part.part.category = entry != nullptr ? std::string_view(entry->category) : std::string_view();
        part.part.specific = limit->specific;
        if (entry != nullptr && !entry->condition.empty()) part.part.remark = entry->condition;
        part.met = limit->exclusive ? is_above(ingredient.percent, limit->percent)
                                    : reaches(ingredient.percent, limit->percent);
        parts.push_back(std::move(part));
    }
    return parts;
}

void judge_threshold(std::string_view endpoint_id, std::string_view title, const ResolvedMixture& mixture,
                     const MixtureRules& rules, std::vector<MixtureResult>& results,
                     const NameStatement& name_statement) {
    const ThresholdEndpoint* endpoint = rules.limits.thresholds.endpoint(endpoint_id);
    if (endpoint == nullptr || !rules.limits.covers(endpoint_id)) {
        results.push_back(not_covered(endpoint_id, title));
        return;
    }
    MixtureResult result;
    result.endpoint = endpoint_id;
    result.title = title;
    result.unknown_percent = mixture.unknown_percent(endpoint_id);
    for (const std::string& category : endpoint->categories) {
        std::vector<ThresholdPart> parts =
            threshold_parts(*endpoint, category, mixture, rules.limits.thresholds);
        if (parts.empty()) continue;
        MixtureTest test;
        test.kind = TestKind::each;
        test.what = endpoint->hazard_class;
        test.category = category == "none" ? std::string() : category;
        test.limit = 1;
        for (const ThresholdRow& row : endpoint->rows)
            if (row.to == category) test.source = row.source;
        for (const ThresholdPart& part : parts) {
            test.value = std::max(test.value, part.part.term);
            test.met = test.met || part.met;
            test.parts.push_back(part.part);
        }
        result.tests.push_back(std::move(test));
        if (!result.tests.back().met) continue;
        parts.erase(
            std::remove_if(parts.begin(), parts.end(), [](const ThresholdPart& part) { return !part.met; }),
            parts.end());
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = endpoint->hazard_class;
        result.category = result.tests.back().category;
        result.statement = parts.front().statement;
        for (const ThresholdPart& part : parts)
            result.specific = result.specific || part.part.specific;
        if (name_statement) name_statement(parts, result);
        break; // categories stand most severe first
    }
    results.push_back(std::move(result));
}

} // namespace routeweigh
