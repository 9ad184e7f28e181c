// SPDX-License-Identifier: MIT
// Harm to aquatic life: m3 of water that dilute the substance to the limit of its class.
//
//   demand = 1 / (L / M)            L in g/m3 (the same number as mg/L), M the M-factor where the level says
//   so
//
// A missing M-factor is at least 1; 1 is taken and the share that rests on it is marked.
#include "assess/hazard/endpoint_list.hpp"
#include "assess/hazard/statement.hpp"

#include "input/field.hpp"

#include <algorithm>
#include <cstddef>

namespace routeweigh {
namespace {

void read_water_limits(const Field& field, EndpointRule& rule) {
    for (const Field& item : field["limits"].items()) {
        HazardLevel level;
        level.name = item["statement"].text();
        level.statements = {statement_number(level.name)};
        if (level.statements[0] == 0) item["statement"].problem("is no hazard statement");
        level.limit = item["g_per_m3"].number();
        if (!(level.limit > 0)) item["g_per_m3"].problem("must be above 0");
        if (const auto divided = item.maybe("divided_by_m_factor"))
            level.divided_by_m_factor = divided->boolean();
        item.maybe("convention");
        item.maybe("missing_m_factor");
        item.close();
        rule.levels.push_back(std::move(level));
    }
    if (const auto without = field.maybe("no_limit"))
        for (const std::string& statement : without->texts())
            rule.without_limit.push_back(statement_number(statement));
    const double worst = field["unassessed_g_per_m3"].number();
    if (!(worst > 0)) field["unassessed_g_per_m3"].problem("must be above 0");
    rule.worst = 1.0 / worst;
}

HazardContribution water_contribution(const EndpointRule& rule, const HazardEntry& entry, const HazardScheme&,
                                      const Banding&) {
    if (!entry.assessed()) return unassessed_contribution(rule);
    HazardContribution result;
    const GhsEntry* without_limit = nullptr;
    for (const GhsEntry& ghs : entry.ghs()) {
        const int number = statement_number(ghs.statement);
        if (std::find(rule.without_limit.begin(), rule.without_limit.end(), number) !=
            rule.without_limit.end())
            without_limit = &ghs;
        for (std::size_t i = 0; i < rule.levels.size(); ++i) {
            const HazardLevel& level = rule.levels[i];
            if (level.statements[0] != number) continue;
            const double demand =
                (level.divided_by_m_factor ? ghs.m_factor.value_or(1.0) : 1.0) / level.limit;
            if (demand <= result.low) continue;
            result.low = result.high = demand;
            result.level = static_cast<int>(i);
            result.basis = HazardBasis::category;
            result.entry = &ghs;
            result.m_factor_assumed = level.divided_by_m_factor && !ghs.m_factor;
        }
    }
    if (result.level < 0 && without_limit != nullptr) {
        result = unassessed_contribution(rule);
        result.entry = without_limit;
    }
    return result;
}

} // namespace

const EndpointFamily aquatic_family{"aquatic limit", read_water_limits, water_contribution};

} // namespace routeweigh
