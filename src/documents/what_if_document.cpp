// SPDX-License-Identifier: MIT
#include "documents/what_if_document.hpp"

#include "compare/numeric_input.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/report_view.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

using namespace documents;
using writing::MachineList;
using writing::MachineObject;

/// One figure on both sides.
struct Pair {
    const Figure* before;
    const Figure* after;

    double difference() const { return after->value - before->value; }
    bool moved() const {
        if (std::isnan(before->value) || std::isnan(after->value))
            return std::isnan(before->value) != std::isnan(after->value);
        const auto apart = [](double a, double b) {
            return a != b && !(std::abs(a - b) <= 1e-9 * std::max(std::abs(a), std::abs(b)));
        };
        return apart(before->value, after->value) || apart(before->high, after->high);
    }
};

/// What only a comparison gives has a meaning where both are compared with a third.
std::vector<Figure> figures_for(const Comparison& comparison, std::size_t route) {
    return comparison.routes().size() > 2 ? figures_of(comparison, route) : comparison.route(route).figures();
}

/// Figures that are the same thing on both sides.
std::vector<Pair> pairs_of(const std::vector<Figure>& before, const std::vector<Figure>& after) {
    std::vector<Pair> pairs;
    for (std::size_t i = 0; i < before.size(); ++i)
        pairs.push_back({&before[i], &after[i]});
    return pairs;
}

std::string place_in_words(const Route& route, const std::string& pointer) {
    for (const NumericInput& input : numeric_inputs(route))
        if (input.pointer == pointer) return input.name();
    for (const Step& step : route.steps)
        for (const Stage& stage : step.stages)
            for (const Charge& charge : stage.charges)
                if (charge.pointer == pointer)
                    return fmt::format("charge of {}, {}", charge.material->name, stage.title);
    if (pointer.starts_with("/correlations/")) return "correlation of two inputs";
    return "";
}

writing::Table changes_table(const Route& before, const Route& after) {
    writing::Table table;
    table.caption = "What is changed";
    table.columns = {
        {.heading = "what"}, {.heading = "before"}, {.heading = "after"}, {.heading = "where in the file"}};
    const auto value = [](const std::string& text) { return text.empty() ? std::string("not there") : text; };
    for (const Parentage::Change& change : after.parent->changes) {
        std::string what = place_in_words(before, change.at);
        if (what.empty()) what = place_in_words(after, change.at);
        if (what.empty()) what = change.at.substr(change.at.rfind('/') + 1);
        table.rows.push_back({what, value(change.before), value(change.after), change.at});
    }
    return table;
}

std::string change_in_percent(const Pair& pair) {
    if (pair.before->unit == "%" || pair.before->value == 0.0 || std::isnan(pair.difference())) return "";
    const double share = 100.0 * pair.difference() / pair.before->value;
    return std::abs(share) > 1e4 ? "" : difference_text(share, std::abs(share) < 9.95 ? 1 : 0);
}

writing::Row row_of(const Pair& pair) {
    const Figure& before = *pair.before;
    const std::string unit = unit_of(before);
    writing::Cell difference(std::isnan(pair.difference())
                                 ? ""
                                 : difference_text(pair.after->value, before.value, before.decimals),
                             pair.difference());
    if (std::isnan(pair.difference())) difference = writing::Cell("");
    return {capitalised(before.name) + (unit.empty() ? "" : ", " + unit), figure_cell(before),
            figure_cell(*pair.after), difference, change_in_percent(pair)};
}

writing::Table figure_table(const std::vector<Pair>& pairs, bool moved, const Comparison& routes) {
    writing::Table table;
    table.caption = moved ? "Figures before and after" : "Figures that stay as they are";
    table.columns = {{.heading = "figure"},
                     {.heading = routes.route(0).route().id, .align = decimal, .baseline = true},
                     {.heading = routes.route(1).route().id, .align = decimal},
                     {.heading = "difference", .align = decimal},
                     {.heading = "change", .align = decimal, .unit = "%"}};
    std::string_view group;
    for (const Pair& pair : pairs) {
        if (pair.moved() != moved) continue;
        if (const std::string_view next = words(pair.before->group); next != group) {
            group = next;
            table.rows.push_back(writing::group(std::string(group)));
        }
        table.rows.push_back(row_of(pair));
    }
    return table;
}

MachineObject tree_of(const std::vector<Pair>& pairs, const Route& before, const Route& after) {
    MachineList changes, figures;
    for (const Parentage::Change& change : after.parent->changes)
        changes.emplace_back(
            MachineObject{{"at", change.at}, {"before", change.before}, {"after", change.after}});
    for (const Pair& pair : pairs)
        figures.emplace_back(MachineObject{{"id", pair.before->id},
                                           {"unit", pair.before->unit},
                                           {"before", pair.before->value},
                                           {"after", pair.after->value},
                                           {"difference", pair.difference()},
                                           {"note", pair.after->note}});
    return {{"routeweigh", std::string(program_version())},
            {"parent", before.id},
            {"id", after.id},
            {"changes", std::move(changes)},
            {"figures", std::move(figures)}};
}

writing::DataCell data_cell(double value) {
    if (!std::isfinite(value)) return {};
    return value;
}

writing::DataRows rows_of(const std::vector<Pair>& pairs, const Route& before, const Route& after) {
    writing::DataRows rows;
    rows.columns = {"parent", "route", "figure", "unit", "before", "after", "difference"};
    for (const Pair& pair : pairs)
        rows.rows.push_back({before.id, after.id, pair.before->id, pair.before->unit,
                             data_cell(pair.before->value), data_cell(pair.after->value),
                             data_cell(pair.difference())});
    return rows;
}

} // namespace

writing::Document what_if_document(const Comparison& comparison) {
    const Route& before = comparison.route(0).route();
    const Route& after = comparison.route(1).route();
    const std::vector<Figure> first = figures_for(comparison, 0), second = figures_for(comparison, 1);
    const std::vector<Pair> pairs = pairs_of(first, second);
    const std::size_t count = after.parent->changes.size();

    writing::Document document;
    document.id = "what_if";
    document.title = fmt::format("What if: {} with {}", before.id, counted(count, "change", "changes"));
    document.subtitle = before.title;
    document.machine = tree_of(pairs, before, after);
    document.rows = rows_of(pairs, before, after);

    std::vector<writing::Block>& blocks = document.blocks;
    if (count == 0)
        blocks.push_back(writing::Paragraph{"Nothing is changed: every value given is the one in the file."});
    else
        blocks.push_back(changes_table(before, after));
    const auto moved = static_cast<std::size_t>(
        std::count_if(pairs.begin(), pairs.end(), [](const Pair& pair) { return pair.moved(); }));
    if (moved > 0)
        blocks.push_back(figure_table(pairs, true, comparison));
    else
        blocks.push_back(writing::Paragraph{"No figure moves."});
    writing::Folded rest{
        fmt::format("The {} figures that stay as they are", pairs.size() - moved), {}, "same"};
    rest.blocks.push_back(figure_table(pairs, false, comparison));
    if (moved < pairs.size()) blocks.push_back(std::move(rest));
    if (count > 0)
        blocks.push_back(writing::Paragraph{
            "Untested: yields that were not changed are assumed to stay, and every separation to do what it "
            "did. A change of amounts can change both."});
    if (comparison.baseline_index() > 1)
        blocks.push_back(writing::Paragraph{
            fmt::format("Same auxiliaries and break-even yield are counted against {}, {}.",
                        comparison.baseline().route().id, comparison.baseline().route().title)});
    blocks.push_back(numbers_of(comparison.route(0)));
    blocks.push_back(not_predicted());
    blocks.push_back(usual_cautions());
    return document;
}

writing::Document inputs_document(const Route& route) {
    writing::Document document;
    document.id = "inputs";
    document.title = fmt::format("What can be changed in {}", route.id);
    document.subtitle = route.title;
    writing::Table table;
    table.caption = "Numeric inputs";
    table.columns = {
        {.heading = "step and stage"}, {.heading = "input"}, {.heading = "value"}, {.heading = "pointer"}};
    for (const NumericInput& input : numeric_inputs(route)) {
        writing::Cell value(input.repeat > 1
                                ? fmt::format("{} x {} {}", input.repeat, digits(input.value, 4), input.unit)
                                : fmt::format("{} {}", digits(input.value, 4), input.unit),
                            input.value);
        table.rows.push_back({input.place, input.word, value, input.pointer});
    }
    document.blocks.push_back(std::move(table));
    document.blocks.push_back(writing::Paragraph{
        {"Change one with ", writing::code("--set POINTER=VALUE"),
         ", or by its name where no other input has it. ",
         "Any other place of the file can be set by its pointer (RFC 6901), ",
         "and many at once with a merge patch (RFC 7396) in ", writing::code("--patch FILE"), "."}});
    return document;
}

} // namespace routeweigh
