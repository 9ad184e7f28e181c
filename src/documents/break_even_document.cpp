// SPDX-License-Identifier: MIT
#include "documents/break_even_document.hpp"

#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
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

std::string input_value(const NumericInput& input, double value) {
    const std::string text = digits(value, 4);
    return input.repeat > 1 ? fmt::format("{} x {} {}", input.repeat, text, input.unit)
                            : fmt::format("{} {}", text, input.unit);
}

/// "1.87 g (1.15 equivalents)".
std::string with_equivalents(const BreakEvenAnswer& answer, double value) {
    std::string text = input_value(answer.input, value);
    if (answer.equivalents == 0.0 || answer.input.unit == "eq") return text;
    return fmt::format("{} ({} equivalents)", text,
                       digits(answer.equivalents * value / answer.input.value, 3));
}

std::string target_words(const BreakEvenQuestion& question) {
    const std::string value = value_text(question.figure, question.target);
    return question.target_of.empty() ? value : fmt::format("{} of {}", value, question.target_of);
}

std::vector<std::string> values(const BreakEvenAnswer& answer, const std::vector<double>& at) {
    std::vector<std::string> words;
    for (const double value : at)
        words.push_back(with_equivalents(answer, value));
    return words;
}

/// The point that comes nearest to the target.
const BreakEvenSearch::Point& nearest_point(const BreakEvenAnswer& answer, double target) {
    return *std::min_element(answer.search.curve.begin(), answer.search.curve.end(),
                             [&](const auto& a, const auto& b) {
                                 return std::abs(a.figure - target) < std::abs(b.figure - target);
                             });
}

/// A value beside the target, with as many digits as it takes to tell the two apart.
std::string told_apart(const FigurePick& figure, double value, double target) {
    constexpr int most = 12;
    const std::string beside = value_text(figure, target), unit = unit_text(figure.unit());
    std::string text = value_text(figure, value);
    for (int count = 4; text == beside && count <= most; ++count)
        text = unit.empty() ? digits(value, count) : digits(value, count) + " " + unit;
    return text;
}

/// Why there is no root, in words.
std::string none_words(const BreakEvenQuestion& question, const BreakEvenAnswer& answer) {
    const NumericInput& input = answer.input;
    const BreakEvenSearch& search = answer.search;
    const auto& near = nearest_point(answer, question.target);
    const std::string best = fmt::format(
        "nearest is {} at {}", told_apart(question.figure, near.figure, question.target),
        near.input < 1e-9 * input.value ? "next to none of it" : with_equivalents(answer, near.input));
    const bool at_high = near.input >= search.high, at_low = near.input <= search.low;
    if (at_high && !search.high_cut && input.bounded)
        return fmt::format("none up to {:g} {}, the physical limit: {}", input.high, input.unit, best);
    if (at_high && !search.high_cut)
        return fmt::format("none up to ten times the amount as written: {}", best);
    if ((at_high && search.high_cut) || (at_low && search.low_cut))
        return fmt::format("none: {}, and beyond it the route cannot be worked", best);
    return fmt::format("none: {}", best);
}

/// The answer as the end of a sentence or the cell of a table.
std::string answer_words(const BreakEvenQuestion& question, const BreakEvenAnswer& answer) {
    const BreakEvenSearch& search = answer.search;
    if (search.curve.empty()) return "cannot be told: at none of the values tried has the route this figure";
    if (search.everywhere) return "equal at every value: this input does not move the figure";
    if (search.constant) return "never: this input does not move the figure";
    if (!search.roots.empty()) return listed(values(answer, search.roots));
    if (!search.jumps.empty())
        return fmt::format("none: the figure leaps past it at {}", listed(values(answer, search.jumps)));
    return none_words(question, answer);
}

void add_limits(const BreakEvenAnswer& answer, std::vector<writing::Text>& items) {
    const BreakEvenSearch& search = answer.search;
    if (search.low_cut)
        items.emplace_back(fmt::format("Below {} the route cannot be worked: {}.",
                                       with_equivalents(answer, search.low), answer.low_reason));
    if (search.high_cut)
        items.emplace_back(fmt::format("Above {} the route cannot be worked: {}.",
                                       with_equivalents(answer, search.high), answer.high_reason));
}

/// Of the line in a picture: another route's figure is a baseline, a number that was given a target.
std::string target_name(const BreakEvenQuestion& question) {
    const std::string words = target_words(question);
    return question.target_of.empty() ? "target, " + words : words;
}

writing::Figure curve_of(const BreakEvenQuestion& question, const BreakEvenAnswer& answer) {
    writing::Curve chart;
    chart.x = {answer.input.word, answer.input.unit};
    chart.y = {question.figure.name(), unit_text(question.figure.unit())};
    writing::Curve::Line line{question.route->route().id, {}},
        goal{target_name(question), {}, !question.target_of.empty()};
    for (const auto& point : answer.window)
        line.points.push_back({point.input, point.figure});
    for (const auto& point : {answer.window.front(), answer.window.back()})
        goal.points.push_back({point.input, question.target});
    chart.lines = {goal, line};
    for (const double root : answer.search.roots)
        chart.markers.push_back({{root, question.target}, "equal at " + input_value(answer.input, root)});
    return {fmt::format("{} of {} against {}", capitalised(question.figure.name()),
                        question.route->route().id, answer.input.name()),
            fmt::format("Break-even: {}.", answer_words(question, answer)), chart};
}

void tell_one(const BreakEvenQuestion& question, const BreakEvenAnswer& answer,
              std::vector<writing::Block>& blocks) {
    blocks.push_back(writing::KeyValueList{
        {{"Input", answer.input.name()},
         {"As written", with_equivalents(answer, answer.input.value)},
         {"Figure now", value_text(question.figure, question.figure.value(question.route->values()))},
         {"Target", target_words(question)},
         {"Break-even", writing::strong(answer_words(question, answer))}}});
    writing::BulletList limits;
    add_limits(answer, limits.items);
    if (!limits.items.empty()) blocks.push_back(std::move(limits));
    if (answer.window.size() > 1 && !answer.search.constant) blocks.push_back(curve_of(question, answer));
}

writing::Table table_of(const BreakEvenQuestion& question, const std::vector<BreakEvenAnswer>& answers) {
    writing::Table table;
    table.caption = fmt::format("Where {} equals {}, one input changed at a time",
                                in_sentence(question.figure.name()), target_words(question));
    table.columns = {{.heading = "input"}, {.heading = "as written"}, {.heading = "break-even"}};
    std::string_view place;
    std::vector<std::string> idle;
    for (const BreakEvenAnswer& answer : answers) {
        if (answer.search.constant && !answer.search.everywhere) {
            idle.push_back(fmt::format("{} ({})", answer.input.word, answer.input.place));
            continue;
        }
        if (answer.input.place != place) table.rows.push_back(writing::group(answer.input.place));
        place = answer.input.place;
        table.rows.push_back({answer.input.word, with_equivalents(answer, answer.input.value),
                              answer_words(question, answer)});
    }
    if (table.rows.empty()) table.rows.push_back({"no input moves the figure", "", ""});
    if (!idle.empty())
        table.remarks.push_back(
            {writing::strong("These do not move the figure:"), writing::Run(" " + join(idle, "; ") + ".")});
    return table;
}

MachineList numbers(const std::vector<double>& list) {
    MachineList result;
    for (const double value : list)
        result.emplace_back(value);
    return result;
}

/// Why no root is there, where none is.
std::string reason_words(const BreakEvenQuestion& question, const BreakEvenAnswer& answer) {
    return answer.search.roots.empty() ? answer_words(question, answer) : std::string();
}

MachineObject nearest_tree(const BreakEvenQuestion& question, const BreakEvenAnswer& answer) {
    const auto& near = nearest_point(answer, question.target);
    return {{"input", near.input}, {"figure", near.figure}};
}

/// What the picture shows: the figure around the value as written and the roots.
MachineList curve_tree(const BreakEvenAnswer& answer) {
    MachineList points;
    for (const auto& point : answer.window)
        points.emplace_back(MachineObject{{"input", point.input}, {"figure", point.figure}});
    return points;
}

MachineObject tree_of(const BreakEvenQuestion& question, const std::vector<BreakEvenAnswer>& answers) {
    MachineList inputs;
    for (const BreakEvenAnswer& answer : answers) {
        const BreakEvenSearch& search = answer.search;
        const bool nearest = search.roots.empty() && !search.curve.empty();
        inputs.emplace_back(
            MachineObject{{"pointer", answer.input.pointer},
                          {"name", answer.input.name()},
                          {"unit", answer.input.unit},
                          {"value", answer.input.value},
                          {"roots", numbers(search.roots)},
                          {"jumps", numbers(search.jumps)},
                          {"constant", search.constant},
                          {"reason", reason_words(question, answer)},
                          {"nearest", nearest ? writing::MachineTree(nearest_tree(question, answer))
                                              : writing::MachineTree()},
                          {"low", search.low},
                          {"high", search.high},
                          {"low_reason", answer.low_reason},
                          {"high_reason", answer.high_reason},
                          {"curve", curve_tree(answer)}});
    }
    return {{"routeweigh", std::string(program_version())},
            {"route", question.route->route().id},
            {"figure", question.figure.id()},
            {"unit", question.figure.unit()},
            {"value", question.figure.value(question.route->values())},
            {"target", question.target},
            {"target_of", question.target_of},
            {"inputs", std::move(inputs)}};
}

/// One root a row; an input without one has the reason in its place.
writing::DataRows rows_of(const BreakEvenQuestion& question, const std::vector<BreakEvenAnswer>& answers) {
    writing::DataRows rows;
    rows.columns = {"route", "figure", "target", "target_of", "pointer",
                    "input", "unit",   "value",  "break_even"};
    for (const BreakEvenAnswer& answer : answers) {
        const auto add = [&](writing::DataCell root) {
            rows.rows.push_back({question.route->route().id, question.figure.id(), question.target,
                                 question.target_of, answer.input.pointer, answer.input.name(),
                                 answer.input.unit, answer.input.value, std::move(root)});
        };
        if (answer.search.roots.empty()) add(reason_words(question, answer));
        for (const double root : answer.search.roots)
            add(root);
    }
    return rows;
}

} // namespace

writing::Document break_even_document(const BreakEvenQuestion& question,
                                      const std::vector<BreakEvenAnswer>& answers) {
    const Route& route = question.route->route();
    writing::Document document;
    document.id = "break_even";
    document.title = fmt::format("Break-even of {}: {}", route.id, question.figure.name());
    document.subtitle = route.title;
    document.machine = tree_of(question, answers);
    document.rows = rows_of(question, answers);
    if (answers.size() == 1) {
        tell_one(question, answers.front(), document.blocks);
    } else {
        document.blocks.push_back(writing::Paragraph{
            fmt::format("{} is {} now.", capitalised(question.figure.name()),
                        value_text(question.figure, question.figure.value(question.route->values())))});
        document.blocks.push_back(table_of(question, answers));
    }
    if (question.figure.id() == "process_mass_intensity" && !question.target_of.empty())
        document.blocks.push_back(writing::Paragraph{fmt::format(
            "Both routes as they are written. With the same auxiliaries they may meet elsewhere: ask "
            "for the figure {}.",
            same_auxiliaries_id)});
    if (question.figure.id() == same_auxiliaries_id)
        document.blocks.push_back(writing::Paragraph{
            fmt::format("Drown-out and flask rinse are those of {}, scaled by theoretical moles of product, "
                        "whatever the route file says of its own.",
                        question.target_of)});
    tell_open_end(*question.route, question.figure.id(), document.blocks);
    document.blocks.push_back(writing::Paragraph{{"Everything else stays as the file says; a yield that is "
                                                  "assumed stays assumed. A break-even is where two "
                                                  "figures meet on paper, and no advice to work there."},
                                                 true});
    document.blocks.push_back(numbers_of(*question.route));
    document.blocks.push_back(usual_cautions());
    return document;
}

} // namespace routeweigh
