// SPDX-License-Identifier: MIT
#include "app/stale_statements.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <string>

namespace routeweigh {
namespace {

bool states_spread(const std::string& value) {
    return value.find("+/-") != std::string::npos || value.find("\u00b1") != std::string::npos ||
           value.find("\"spread\"") != std::string::npos;
}

bool changes_at(const std::vector<Assignment>& changes, const std::string& pointer) {
    return std::any_of(changes.begin(), changes.end(),
                       [&](const Assignment& change) { return change.pointer == pointer; });
}

/// The objects whose number, or the whole of which, gives way to one without a spread.
std::vector<std::string> exact_from_now_on(const Route& route, const std::vector<Assignment>& changes) {
    std::vector<std::string> owners;
    const auto look = [&](const std::string& owner, const char* number, bool spread) {
        if (!spread || changes_at(changes, owner + "/spread")) return;
        const bool exact = std::any_of(changes.begin(), changes.end(), [&](const Assignment& change) {
            return (change.pointer == owner || change.pointer == owner + number) &&
                   !states_spread(change.value);
        });
        if (exact) owners.push_back(owner);
    };
    for (const Step& step : route.steps) {
        for (const Stage& stage : step.stages)
            for (const Charge& charge : stage.charges)
                look(charge.pointer, "/amount", charge.spread.has_value());
        look(step.isolated.pointer, step.isolated.mass ? "/mass" : "/yield",
             step.isolated.spread.has_value());
    }
    for (const Reuse& reuse : route.reuse)
        look(reuse.pointer, "/fraction", reuse.spread.has_value());
    for (const Bottle& bottle : route.bottles)
        look(bottle.pointer, "/strength", bottle.spread.has_value());
    return owners;
}

} // namespace

std::vector<Assignment> stale_spreads(const Route& route, const std::vector<Assignment>& changes) {
    const std::vector<std::string> owners = exact_from_now_on(route, changes);
    std::vector<Assignment> stale;
    for (const std::string& owner : owners)
        stale.push_back({owner + "/spread", {}});
    const auto gone = [&](const std::string& pointer) {
        return std::find(owners.begin(), owners.end(), pointer) != owners.end();
    };
    const auto& pairs = route.correlated.pairs;
    for (std::size_t i = pairs.size(); i-- > 0;) // from the end, so that the places of the others stay
        if (gone(pairs[i].first) || gone(pairs[i].second))
            stale.push_back({fmt::format("/correlations/{}", i), {}});
    return stale;
}

std::vector<Assignment> stale_words(const Route& route, const std::vector<Assignment>& changes) {
    std::vector<Assignment> stale;
    for (const Step& step : route.steps)
        for (const Stage& stage : step.stages)
            for (const Charge& charge : stage.charges) {
                if (!changes_at(changes, charge.pointer + "/amount")) continue;
                if (!charge.given_as.empty()) stale.push_back({charge.pointer + "/given_as", {}});
                if (!charge.source.empty()) stale.push_back({charge.pointer + "/source", {}});
                if (charge.note.find_first_of("0123456789") != std::string::npos)
                    stale.push_back({charge.pointer + "/note", {}});
            }
    return stale;
}

} // namespace routeweigh
