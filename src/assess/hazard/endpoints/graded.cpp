// SPDX-License-Identifier: MIT
// Hazards without a natural concentration: grams at the serious level; grams at the lower one are shown, not
// scored.
//
// A substance counts once, at its worst level, however many statements it has there.
#include "assess/hazard/endpoint_list.hpp"
#include "assess/hazard/statement.hpp"

#include "input/field.hpp"

#include <algorithm>
#include <cstddef>

namespace routeweigh {
namespace {

constexpr int serious = 0;

void read_levels(const Field& field, EndpointRule& rule) {
    field.maybe("unassessed"); // the full mass, the only reading there is
    for (const char* name : {"serious", "lower"}) {
        HazardLevel level;
        level.name = name;
        for (const Field& item : field[name].items()) {
            level.statements.push_back(statement_number(item.text()));
            if (level.statements.back() == 0) item.problem("is no hazard statement");
        }
        rule.levels.push_back(std::move(level));
    }
    rule.worst = 1.0;
}

HazardContribution level_contribution(const EndpointRule& rule, const HazardEntry& entry, const HazardScheme&,
                                      const Banding&) {
    if (!entry.assessed()) return unassessed_contribution(rule);
    HazardContribution result;
    for (const GhsEntry& ghs : entry.ghs()) {
        const int number = statement_number(ghs.statement);
        for (std::size_t i = 0; i < rule.levels.size(); ++i) {
            const std::vector<int>& statements = rule.levels[i].statements;
            const int level = static_cast<int>(i);
            if (result.level >= 0 && result.level <= level) continue;
            if (std::find(statements.begin(), statements.end(), number) == statements.end()) continue;
            result.level = level;
            result.basis = HazardBasis::category;
            result.entry = &ghs;
        }
    }
    result.low = result.high = result.level == serious ? 1.0 : 0.0;
    result.lower_level = result.level > serious;
    return result;
}

} // namespace

const EndpointFamily graded_family{"graded", read_levels, level_contribution};

} // namespace routeweigh
