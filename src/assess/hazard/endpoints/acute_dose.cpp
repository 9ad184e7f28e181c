// SPDX-License-Identifier: MIT
// Acute toxicity by mouth or skin: kg of body mass for which the substance is the dose of its estimate.
//
//   demand = 1000 mg/g / ATE        ATE in mg per kg of body mass
//
// The harmonised estimate counts where the entry has one, else the point that stands for its category.
#include "assess/hazard/endpoint_list.hpp"
#include "assess/hazard/statement.hpp"

#include "input/field.hpp"

#include <algorithm>
#include <cstddef>

namespace routeweigh {
namespace {

void read_doses(const Field& field, EndpointRule& rule) {
    std::vector<int> statements;
    for (const std::string& statement : field["statements"].texts())
        statements.push_back(statement_number(statement));
    const Field points = field["points_mg_per_kg"];
    for (const std::string& category : points.keys()) {
        HazardLevel level{"category " + category, statements, category, points[category].number(), false};
        if (!(level.limit > 0)) points[category].problem("must be above 0");
        rule.levels.push_back(std::move(level));
    }
    std::sort(rule.levels.begin(), rule.levels.end(),
              [](const HazardLevel& a, const HazardLevel& b) { return a.limit < b.limit; });
    const double worst = field["unassessed_mg_per_kg"].number();
    if (!(worst > 0)) field["unassessed_mg_per_kg"].problem("must be above 0");
    rule.worst = mg_per_g / worst;
}

// The level of the category; the worst where the scheme does not name it.
int level_of(const EndpointRule& rule, const GhsEntry& ghs) {
    for (std::size_t i = 0; i < rule.levels.size(); ++i)
        if (rule.levels[i].category == ghs.category) return static_cast<int>(i);
    return 0;
}

HazardContribution dose_contribution(const EndpointRule& rule, const HazardEntry& entry, const HazardScheme&,
                                     const Banding&) {
    if (!entry.assessed()) return unassessed_contribution(rule);
    HazardContribution result;
    if (rule.levels.empty()) return result;
    const std::vector<int>& statements = rule.levels.front().statements;
    for (const GhsEntry& ghs : entry.ghs()) {
        const int number = statement_number(ghs.statement);
        if (std::find(statements.begin(), statements.end(), number) == statements.end()) continue;
        const int level = level_of(rule, ghs);
        const bool harmonised = ghs.acute_toxicity && ghs.acute_toxicity->route == rule.id;
        const double dose =
            harmonised ? ghs.acute_toxicity->value : rule.levels[static_cast<std::size_t>(level)].limit;
        const double demand = mg_per_g / dose;
        if (demand <= result.low) continue;
        result.low = result.high = demand;
        result.level = level;
        result.basis = HazardBasis::category;
        result.entry = &ghs;
    }
    return result;
}

} // namespace

const EndpointFamily acute_dose_family{"acute dose", read_doses, dose_contribution};

} // namespace routeweigh
