// SPDX-License-Identifier: MIT
#include "documents/term_hazards.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

namespace routeweigh::documents {
namespace {

std::vector<std::string> kind_words(const WeekHazards& hazards) {
    std::vector<std::string> kinds;
    for (const BenchHazard kind : hazards.kinds)
        kinds.emplace_back(words(kind));
    return kinds;
}

std::string joined_or_none(const std::vector<std::string>& list) {
    return list.empty() ? "none" : join(list, "; ");
}

/// Every statement with its bottles and their weeks, and every bottle not assessed with its weeks.
Listing told_of_term(const std::vector<WeekHazards>& hazards) {
    std::map<std::string, std::map<std::string, std::vector<std::string>>> weeks; // by hazard, by bottle
    for (const WeekHazards& week : hazards)
        for (const auto& [hazard, bottles] : week.told) {
            for (const std::string& bottle : bottles)
                weeks[hazard][bottle + " "].push_back(std::to_string(week.week));
            if (bottles.empty()) weeks[hazard][""].push_back(std::to_string(week.week)); // names its bottle
        }
    Listing found;
    for (const auto& [hazard, bottles] : weeks)
        for (const auto& [whose, numbers] : bottles)
            found[hazard].insert(fmt::format("{}in week {}", whose, join(numbers, " and ")));
    return found;
}

/// \param week  that may have no experiment in this term
Listing told_of_week(const std::vector<WeekHazards>& hazards, int week) {
    const auto found = std::find_if(hazards.begin(), hazards.end(),
                                    [&](const WeekHazards& one) { return one.week == week; });
    return found == hazards.end() ? Listing() : found->told;
}

} // namespace

std::vector<WeekHazards> hazards_of_term(const course::CourseUse& term, const ClassificationRules& rules) {
    std::vector<WeekHazards> all;
    for (const course::Experiment& experiment : term.experiments) {
        const Assessment& route = *experiment.use.route;
        const std::vector<BenchBottle> bench = bench_of(route, rules);
        WeekHazards week{experiment.week,
                         route.route().product->name,
                         {},
                         statements_on_bench(bench),
                         hazards_on_bench(bench),
                         {}};
        for (const BenchBottle& bottle : bench) {
            week.kinds.insert(bottle.hazards.begin(), bottle.hazards.end());
            if (!bottle.assessed) week.open.push_back(not_assessed(bottle));
            if (!bottle.undecided.empty())
                week.open.push_back(fmt::format("{}: a test decides on {}", bottle.material->name,
                                                join(bottle.undecided, ", ")));
        }
        all.push_back(std::move(week));
    }
    return all;
}

writing::Table hazard_table(const std::vector<WeekHazards>& hazards) {
    writing::Table table;
    table.caption = "Hazards of the bottles on the bench, by week";
    table.columns = {{.heading = "week"},
                     {.heading = "product"},
                     {.heading = "kinds"},
                     {.heading = "hazard statements, with their bottles"},
                     {.heading = "open"}};
    for (const WeekHazards& week : hazards)
        table.rows.push_back({std::to_string(week.week), week.product, joined_or_none(kind_words(week)),
                              joined_or_none(only_in(week.statements, {})), joined_or_none(week.open)});
    return table;
}

writing::MachineObject hazards_tree(const WeekHazards& hazards) {
    writing::MachineList statements;
    for (const auto& [statement, bottles] : hazards.statements)
        statements.emplace_back(writing::MachineObject{
            {"statement", statement},
            {"bottles", writing::text_list(std::vector<std::string>(bottles.begin(), bottles.end()))}});
    return {{"kinds", writing::text_list(kind_words(hazards))},
            {"statements", std::move(statements)},
            {"open", writing::text_list(hazards.open)}};
}

std::vector<HazardChange> hazard_changes(const std::vector<WeekHazards>& before,
                                         const std::vector<WeekHazards>& after) {
    std::set<int> weeks;
    for (const auto* term : {&before, &after})
        for (const WeekHazards& week : *term)
            weeks.insert(week.week);
    std::vector<HazardChange> changes;
    for (const int week : weeks) {
        const Listing then = told_of_week(before, week), now = told_of_week(after, week);
        HazardChange change{week, only_in(now, then), only_in(then, now)};
        if (!change.comes.empty() || !change.goes.empty()) changes.push_back(std::move(change));
    }
    const Listing then = told_of_term(before), now = told_of_term(after);
    changes.push_back({0, only_in(now, then), only_in(then, now)});
    return changes;
}

writing::Table hazard_change_table(const std::vector<HazardChange>& changes) {
    writing::Table table;
    table.caption = "Hazard statements and unassessed bottles: what comes and what goes";
    table.columns = {{.heading = ""}, {.heading = "comes"}, {.heading = "goes"}};
    for (const HazardChange& change : changes)
        table.rows.push_back({change.week > 0 ? fmt::format("week {}", change.week) : "the whole term",
                              joined_or_none(change.comes), joined_or_none(change.goes)});
    return table;
}

writing::MachineList hazard_changes_tree(const std::vector<HazardChange>& changes) {
    writing::MachineList list;
    for (const HazardChange& change : changes)
        list.emplace_back(writing::MachineObject{
            {"week", change.week > 0 ? writing::MachineTree(change.week) : writing::MachineTree()},
            {"comes", writing::text_list(change.comes)},
            {"goes", writing::text_list(change.goes)}});
    return list;
}

} // namespace routeweigh::documents
