// SPDX-License-Identifier: MIT
#include "documents/term_document.hpp"

#include "assess/bench/bench_rules.hpp"
#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/term_data.hpp"
#include "documents/term_figures.hpp"
#include "documents/term_hazards.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

namespace routeweigh {
namespace {

using namespace documents;
using course::CourseUse;

constexpr const char* pack_words = "Packs to buy: a week's figure is for that week by itself, as if the "
                                   "shelf were empty; the term's buys each "
                                   "material once for all weeks, so that what one week leaves in a pack "
                                   "serves the next. Whether it keeps so long "
                                   "is not asked.";

/// Does the experiment fit the session? Stages that state no time are named, for they count as nothing.
std::string session_words(const course::ClassUse& use) {
    const double lacking = minutes_lacking(use);
    const double left = use.plan.session - use.one.minutes;
    const std::string without =
        counted(static_cast<std::size_t>(use.one.silent_stages), "stage", "stages") + " without a time";
    if (lacking > 0.0)
        return fmt::format("no, lacks {} min{}", fixed(lacking, 0),
                           use.one.silent_stages > 0 ? " and " + without : "");
    if (use.one.silent_stages > 0) return fmt::format("{} min left for {}", fixed(left, 0), without);
    return fmt::format("yes, {} min left", fixed(left, 0));
}

/// \param lacking  some of it is not known
writing::Cell cell_of(const TermFigure& figure, double value, bool lacking) {
    if (is_missing(figure, value, lacking)) return writing::missing("not in the price list");
    return {fixed(value, figure.decimals), value};
}

bool is_lacking(const TermFigure& figure, const course::ClassUse& use) {
    return figure.lacks != nullptr && figure.lacks(use);
}

/// Some experiment leaves something out of the figure.
bool is_open(const TermFigure& figure, const CourseUse& term) {
    return std::any_of(term.experiments.begin(), term.experiments.end(),
                       [&](const auto& one) { return is_lacking(figure, one.use); });
}

writing::Table experiment_table(const CourseUse& term) {
    writing::Table table;
    table.caption = "The experiments";
    table.columns = {{.heading = "week"},
                     {.heading = "product"},
                     {.heading = "method"},
                     {.heading = "status of its numbers"}};
    const double session = term.plan().session;
    if (session > 0.0)
        table.columns.push_back({.heading = fmt::format("fits a session of {} min", fixed(session, 0))});
    for (const course::Experiment& experiment : term.experiments) {
        const Assessment& route = *experiment.use.route;
        table.rows.push_back({std::to_string(experiment.week), route.route().product->name,
                              route.route().title,
                              route.route().status + (route.yield_assumed() ? "; yield assumed" : "")});
        if (session > 0.0) table.rows.back().cells.emplace_back(session_words(experiment.use));
    }
    return table;
}

/// Figures down, weeks across, so that a term fits a page.
writing::Table figure_table(const CourseUse& term, const stock::PriceList& prices) {
    writing::Table table;
    table.caption = "What the whole class takes and leaves, by week";
    table.columns = {{.heading = "figure"}, {.heading = "unit"}};
    for (const course::Experiment& experiment : term.experiments)
        table.columns.push_back({.heading = fmt::format("week {}", experiment.week), .align = decimal});
    table.columns.push_back({.heading = "term", .align = decimal});
    for (const TermFigure& figure : term_figures()) {
        if (!is_shown(figure, term.plan(), prices)) continue;
        writing::Row row({writing::Cell(std::string(figure.name)), writing::Cell(unit_of(figure, prices))});
        for (const course::Experiment& experiment : term.experiments)
            row.cells.push_back(
                cell_of(figure, figure.of(experiment.use), is_lacking(figure, experiment.use)));
        row.cells.push_back(cell_of(figure, of_term(figure, term, prices), is_open(figure, term)));
        table.rows.push_back(std::move(row));
    }
    if (!prices.packs.empty()) table.remarks.emplace_back(pack_words);
    if (term.plan().extra > 0.0) table.remarks.push_back(extra_words(term.plan()));
    return table;
}

writing::Table container_table(const CourseUse& term) {
    writing::Table table;
    table.caption = "Containers of the term";
    table.columns = {{.heading = "container"},
                     {.heading = "volume, allowance included", .align = decimal, .unit = "L"},
                     {.heading = "containers", .align = writing::Align::right}};
    for (const course::ContainerTotal& total : term.containers())
        if (total.volume > 0.0)
            table.rows.push_back({total.name, number_cell(total.volume / 1000.0, 2),
                                  total.containers > 0
                                      ? writing::Cell(std::to_string(total.containers))
                                      : writing::missing("one for each stream, as the waste plan says")});
    table.remarks.emplace_back(
        "What waits from week to week may not be mixed on the word of this table: the waste plan "
        "of each experiment names conflicts and treatments first.");
    return table;
}

writing::Table technique_table(const CourseUse& term) {
    writing::Table table;
    table.caption = "Techniques practised";
    table.columns = {{.heading = "technique"}, {.heading = "weeks"}};
    for (const auto& [technique, weeks] : term.techniques()) {
        std::vector<std::string> numbers;
        for (const int week : weeks)
            numbers.push_back(std::to_string(week));
        table.rows.push_back({technique, join(numbers, ", ")});
    }
    return table;
}

/// Before and after, the rows in which the change loses first.
writing::Table change_table(const CourseUse& before, const CourseUse& after, const stock::PriceList& prices) {
    writing::Table table;
    table.caption = "What changes over the term; where it loses stands first";
    table.columns = {{.heading = "figure"},
                     {.heading = "unit"},
                     {.heading = "before", .align = decimal},
                     {.heading = "after", .align = decimal},
                     {.heading = "difference", .align = decimal},
                     {.heading = "verdict"}};
    std::vector<writing::Row> worse, open, rest;
    for (const TermFigure& figure : term_figures()) {
        if (!is_shown(figure, before.plan(), prices) || !is_shown(figure, after.plan(), prices)) continue;
        const double old_value = of_term(figure, before, prices), new_value = of_term(figure, after, prices);
        const int sign = printed_sign(new_value - old_value, figure.decimals);
        const bool lacking = is_open(figure, before) || is_open(figure, after);
        writing::Row row({writing::Cell(std::string(figure.name)), writing::Cell(unit_of(figure, prices)),
                          cell_of(figure, old_value, is_open(figure, before)),
                          cell_of(figure, new_value, is_open(figure, after)),
                          writing::Cell((sign > 0 ? "+" : "") + fixed(new_value - old_value, figure.decimals),
                                        new_value - old_value),
                          writing::Cell(lacking    ? "open: not all is known"
                                        : sign > 0 ? "more"
                                        : sign < 0 ? "less"
                                                   : "no difference at this precision")});
        (lacking ? open : sign > 0 ? worse : rest).push_back(std::move(row));
    }
    for (std::vector<writing::Row>* rows : {&worse, &open, &rest})
        table.rows.insert(table.rows.end(), rows->begin(), rows->end());
    table.remarks = {"Open: a price or a time is lacking, before or after."};
    return table;
}

const std::string& route_id(const course::Experiment& experiment) {
    return experiment.use.route->route().id;
}

/// Experiments of one term that the other does not have in the same week.
std::vector<const course::Experiment*> only_in(const CourseUse& term, const CourseUse& other) {
    std::vector<const course::Experiment*> only;
    for (const course::Experiment& experiment : term.experiments)
        if (std::none_of(other.experiments.begin(), other.experiments.end(), [&](const auto& one) {
                return one.week == experiment.week && route_id(one) == route_id(experiment);
            }))
            only.push_back(&experiment);
    return only;
}

/// One line for each experiment that is moved to another week, left out or added.
std::vector<std::string> experiment_changes(const CourseUse& before, const CourseUse& after) {
    std::vector<const course::Experiment*> added = only_in(after, before);
    std::vector<std::string> moved, lines;
    const auto words = [](const course::Experiment& experiment) {
        const Route& route = experiment.use.route->route();
        return fmt::format("{}, {}", route.product->name, route.title);
    };
    for (const course::Experiment* old : only_in(before, after)) {
        const auto again = std::find_if(added.begin(), added.end(),
                                        [&](const auto* one) { return route_id(*one) == route_id(*old); });
        if (again == added.end()) {
            lines.push_back(fmt::format("Week {} leaves out: {}.", old->week, words(*old)));
        } else {
            moved.push_back(
                fmt::format("Moved from week {} to week {}: {}.", old->week, (*again)->week, words(*old)));
            added.erase(again);
        }
    }
    for (const course::Experiment* one : added)
        lines.push_back(fmt::format("Week {} adds: {}.", one->week, words(*one)));
    moved.insert(moved.end(), lines.begin(), lines.end());
    return moved;
}

writing::BulletList technique_changes(const CourseUse& before, const CourseUse& after) {
    std::set<std::string> old_ones, new_ones;
    for (const auto& [technique, weeks] : before.techniques())
        old_ones.insert(technique);
    for (const auto& [technique, weeks] : after.techniques())
        new_ones.insert(technique);
    std::vector<std::string> lost, gained;
    std::set_difference(old_ones.begin(), old_ones.end(), new_ones.begin(), new_ones.end(),
                        std::back_inserter(lost));
    std::set_difference(new_ones.begin(), new_ones.end(), old_ones.begin(), old_ones.end(),
                        std::back_inserter(gained));
    writing::BulletList list;
    list.items.emplace_back("Techniques lost: " + (lost.empty() ? "none" : join(lost, ", ")) + ".");
    list.items.emplace_back("Techniques gained: " + (gained.empty() ? "none" : join(gained, ", ")) + ".");
    for (std::string& line : experiment_changes(before, after))
        list.items.emplace_back(std::move(line));
    return list;
}

} // namespace

writing::Document term_document(const CourseUse& term, const CourseUse* before, const course::House& house) {
    const stock::PriceList& prices = house.prices;
    const ClassificationRules rules(house.catalogue, {bench::regime_of(house.waste.local), {}});
    const std::vector<WeekHazards> hazards = hazards_of_term(term, rules);
    writing::Document document;
    document.id = "term";
    document.title = fmt::format("{}, {}", term.title, term.term);
    const stock::ClassPlan& plan = term.plan();
    document.subtitle = fmt::format("{}; {} of {}", term.college,
                                    counted(static_cast<std::size_t>(plan.sections), "section", "sections"),
                                    counted(static_cast<std::size_t>(plan.students), "student", "students"));
    auto& blocks = document.blocks;
    std::vector<WeekHazards> hazards_before;
    std::vector<HazardChange> changes;
    if (before != nullptr) {
        hazards_before = hazards_of_term(*before, rules);
        changes = hazard_changes(hazards_before, hazards);
        blocks.push_back(
            writing::Heading{2, fmt::format("Against {}", before->term == term.term && before->id == term.id
                                                              ? "the term as it is planned"
                                                              : before->title + ", " + before->term)});
        blocks.push_back(change_table(*before, term, prices));
        blocks.push_back(technique_changes(*before, term));
        blocks.push_back(hazard_change_table(changes));
        blocks.push_back(writing::Paragraph{"Products and scales differ between experiments, so no figure "
                                            "per gram and no hazard score stands here: "
                                            "compare routes to one product with the command compare.",
                                            true});
    }
    blocks.push_back(writing::Heading{2, "The term"});
    blocks.push_back(experiment_table(term));
    blocks.push_back(figure_table(term, prices));
    blocks.push_back(container_table(term));
    blocks.push_back(hazard_table(hazards));
    blocks.push_back(writing::Paragraph{limits_of_statements(rules.mixture), true});
    blocks.push_back(technique_table(term));
    std::set<std::string> unpriced;
    for (const course::Experiment& experiment : term.experiments)
        unpriced.insert(experiment.use.money.unpriced.begin(), experiment.use.money.unpriced.end());
    if (!prices.packs.empty()) {
        blocks.push_back(writing::Paragraph{capitalised(prices.words()) + ".", true});
        if (!unpriced.empty())
            blocks.push_back(writing::Paragraph{
                "Not in the price list and counted as nothing: " +
                    join(std::vector<std::string>(unpriced.begin(), unpriced.end()), "; ") + ".",
                true});
    }
    blocks.push_back(usual_cautions());
    document.colophon = fmt::format("Made by routeweigh {}.", program_version());
    document.rows = term_rows(term, prices, hazards);
    writing::MachineTree old_term;
    if (before != nullptr) old_term = term_tree(*before, prices, hazards_before);
    document.machine = writing::MachineObject{{"routeweigh", std::string(program_version())},
                                              {"course", term_tree(term, prices, hazards)},
                                              {"before", std::move(old_term)},
                                              {"hazard_changes", hazard_changes_tree(changes)},
                                              {"prices", prices.words()}};
    return document;
}

} // namespace routeweigh
