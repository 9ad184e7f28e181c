// SPDX-License-Identifier: MIT
#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/improvement_words.hpp"
#include "documents/improvements_document.hpp"
#include "documents/inputs.hpp"
#include "documents/number.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

using namespace documents;

/// The levers asked about: the first of the ranking, each question once.
std::vector<const Improvement*> levers_asked(const Improvements& improvements, std::size_t top) {
    std::vector<const Improvement*> list;
    for (const Improvement& entry : improvements.ranked) {
        if (list.size() == top) break;
        if (std::none_of(list.begin(), list.end(), [&](const Improvement* other) {
                return other->candidate.question == entry.candidate.question;
            }))
            list.push_back(&entry);
    }
    return list;
}

/// In an order that does not give the ranking away.
std::vector<const Improvement*> by_question(std::vector<const Improvement*> list) {
    std::stable_sort(list.begin(), list.end(), [](const auto* a, const auto* b) {
        return a->candidate.question < b->candidate.question;
    });
    return list;
}

/// A question, and what the key says of it: its first words strong, then the rest.
struct Asked {
    std::string question, head, rest;
    const Improvement* lever = nullptr; ///< that it is about, where it is about one

    std::string answer() const { return head + rest; }
};

std::string mass_answer(const Assessment& route) {
    const PurposeInputs inputs = inputs_by_purpose(route);
    std::vector<std::size_t> order;
    for (std::size_t p = 0; p < purpose_count; ++p)
        if (inputs[p].grams > 0.0) order.push_back(p);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return inputs[a].grams > inputs[b].grams; });
    std::vector<std::string> parts;
    for (const std::size_t p : order)
        parts.push_back(
            fmt::format("{} {} g", words(static_cast<Purpose>(p)), figure_text(inputs[p].grams, 1)));
    return "Per gram of product: " + listed(parts) + ".";
}

/// The fewest significant digits, from four on, with which a calculator comes from the numbers as they are
/// printed to the result as it is printed.
template<typename Result>
int digits_to_reproduce(const std::vector<double>& numbers, const Result& printed_result) {
    constexpr int most = 12;
    const std::string wanted = printed_result(numbers);
    for (int count = 4; count < most; ++count) {
        std::vector<double> printed;
        for (const double number : numbers)
            printed.push_back(std::stod(significant(number, count)));
        if (printed_result(printed) == wanted) return count;
    }
    return most;
}

/// "60.75 / 1.712 = 35.5 g/g": a plain ratio with its numbers put in.
std::string worked_ratio(const FigurePick& figure, const FigurePick::Ratio& ratio) {
    const auto result = [&](const std::vector<double>& parts) {
        return value_text(figure, parts[0] * parts[1] / parts[2]);
    };
    const std::vector<double> parts{ratio.factor, ratio.above, ratio.below};
    const int count = digits_to_reproduce(parts, result);
    return fmt::format("{}{} / {} = {}",
                       ratio.factor == 1.0 ? "" : fmt::format("{} × ", digits(ratio.factor, count)),
                       digits(ratio.above, count), digits(ratio.below, count), result(parts));
}

/// The figure before and after, as ratios where it is one.
std::string worked(const Improvements& improvements, const Improvement& entry) {
    const FigurePick& figure = improvements.figure;
    if (!improvements.ratio || !entry.ratio)
        return fmt::format("{} before, {} after.", value_text(figure, entry.before),
                           value_text(figure, entry.after));
    return fmt::format("Before: {}. After: {}.", worked_ratio(figure, *improvements.ratio),
                       worked_ratio(figure, *entry.ratio));
}

/// A way in which a figure may hang on the yield while the inputs stay: yield x (above + shift) / (below +
/// shift) is the yield at which the gain is gone.
struct YieldRule {
    std::string_view reason;
    double shift;    ///< added to the figure above and below the line
    bool falls_with; ///< the figure grows as the yield falls: after stands above the line, before below
};

constexpr YieldRule yield_rules[] = {
    {"With fixed inputs this figure goes as one over the yield, so the gain is gone at yield × after / "
     "before.",
     0.0, true},
    {"With fixed inputs this figure goes as the yield, so the gain is gone at yield × before / after.", 0.0,
     false},
    {"With fixed inputs E + 1 goes as one over the yield, so the gain is gone at yield × (after + 1) / "
     "(before + 1).",
     1.0, true},
};

/// What eats the gain of a change, by the rule that gives what was computed; without a reason where none
/// does.
std::string loss_answer(const FigurePick& figure, const Improvement& entry) {
    if (!entry.yield_at_par)
        return fmt::format("No loss of yield eats the gain of this: {}.", entry.candidate.what);
    const std::string par = percent(*entry.yield_at_par, 1);
    for (const YieldRule& rule : yield_rules) {
        if (rule.falls_with != (figure.better() == Better::lower)) continue;
        const double above = rule.falls_with ? entry.after : entry.before,
                     below = rule.falls_with ? entry.before : entry.after;
        const std::vector<double> parts{100.0 * entry.yield, above, below};
        const auto result = [&](const std::vector<double>& numbers) {
            return numbers[0] / 100.0 * (numbers[1] + rule.shift) / (numbers[2] + rule.shift);
        };
        if (std::abs(result(parts) - *entry.yield_at_par) > 1e-6) continue;
        const int count =
            digits_to_reproduce(parts, [&](const auto& numbers) { return percent(result(numbers), 1); });
        const auto part = [&](double value) {
            return rule.shift == 0.0 ? digits(value, count) : fmt::format("({} + 1)", digits(value, count));
        };
        return fmt::format("{} Here: {} % × {} / {} = {} for {}.", rule.reason, digits(parts[0], count),
                           part(above), part(below), par, entry.candidate.what);
    }
    return fmt::format("Found by computing, with one yield after the other: the gain is gone at {} for {}.",
                       par, entry.candidate.what);
}

std::string order_answer(const Improvements& improvements, const std::vector<const Improvement*>& ranked) {
    std::vector<std::string> order;
    for (const Improvement* lever : ranked)
        order.push_back(
            fmt::format("{}: {}", lever->candidate.what,
                        effect_text(improvements.figure, lever->before, lever->after - lever->before)));
    return "In order: " + join(order, "; ") + ".";
}

/// Every question with its answer. \pre there is a lever
std::vector<Asked> ask(const Assessment& route, const Improvements& improvements,
                       const std::vector<const Improvement*>& levers) {
    std::vector<const Improvement*> ranked = levers;
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const auto* a, const auto* b) { return a->gain > b->gain; });
    std::vector<Asked> asked;
    asked.push_back({"Where does the mass go? Name the purposes (reactants, solvents, drown-out, washing, "
                     "purification) in the order of what they take.",
                     "", mass_answer(route)});
    for (const Improvement* lever : levers)
        asked.push_back({lever->candidate.question +
                             " What would it change, what might it break, and how would you test that?",
                         capitalised(lever->candidate.what) + ".",
                         fmt::format(" {}{} Hazard added: {}.", worked(improvements, *lever),
                                     dangers_and_tests(lever->candidate), added_text(*lever)),
                         lever});
    asked.push_back({fmt::format("Put these changes in the order of what they would do for the {}. Say why.",
                                 in_sentence(improvements.figure.name())),
                     "", order_answer(improvements, ranked)});
    asked.push_back(
        {"For the first of your list: how much yield could be lost before the gain is gone? Give a "
         "formula first, then a number.",
         "", loss_answer(improvements.figure, *ranked.front())});
    if (route.yield_assumed())
        asked.push_back({"The yield of the procedure is assumed. Which of your answers depend on it?", "",
                         "Every figure per gram of product does. The order of changes that only take inputs "
                         "away does not, as long as the yield is the same for all."});
    return asked;
}

void add_key(const Assessment& route, const Improvements& improvements, const std::vector<Asked>& asked,
             std::vector<writing::Block>& blocks) {
    writing::BulletList list;
    list.numbered = true;
    for (const Asked& one : asked)
        list.items.push_back(one.head.empty()
                                 ? writing::Text(one.rest)
                                 : writing::Text{writing::strong(one.head), writing::Run(one.rest)});
    blocks.push_back(writing::Heading{2, "Key", "key"});
    blocks.push_back(std::move(list));
    if (route.route().steps.size() > 1) blocks.push_back(amounts_of_steps());
    tell_open_end(route, improvements.figure.id(), blocks);
    blocks.push_back(
        writing::Paragraph{fmt::format("All of it is {}. An answer that names another test, or another "
                                       "order with a reason, is as good.",
                                       standing_of(improvements))});
}

/// Without numbers and answers, unless the key is asked for.
writing::MachineObject tree_of(const Assessment& route, const Improvements& improvements,
                               const std::vector<Asked>& asked, bool with_key) {
    writing::MachineList questions;
    for (const Asked& one : asked) {
        writing::MachineObject entry{{"question", one.question}};
        if (with_key) {
            entry.push_back({"answer", one.answer()});
            if (one.lever != nullptr) {
                entry.push_back({"before", one.lever->before});
                entry.push_back({"after", one.lever->after});
                entry.push_back({"yield", 100.0 * one.lever->yield});
                entry.push_back({"yield_at_par",
                                 one.lever->yield_at_par ? 100.0 * *one.lever->yield_at_par : std::nan("")});
            }
        }
        questions.emplace_back(std::move(entry));
    }
    return {{"routeweigh", std::string(program_version())}, {"route", route.route().id},
            {"figure", improvements.figure.id()},           {"unit", improvements.figure.unit()},
            {"standing", standing_of(improvements)},        {"questions", std::move(questions)}};
}

/// One question a row; what belongs to the key is empty without it.
writing::DataRows rows_of(const Assessment& route, const Improvements& improvements,
                          const std::vector<Asked>& asked, bool with_key) {
    writing::DataRows rows;
    rows.columns = {"route", "figure", "number", "question"};
    if (with_key)
        rows.columns.insert(rows.columns.end(), {"answer", "before", "after", "yield", "yield_at_par"});
    double number = 0.0;
    for (const Asked& one : asked) {
        std::vector<writing::DataCell> row{route.route().id, improvements.figure.id(), ++number,
                                           one.question};
        if (with_key) {
            row.emplace_back(one.answer());
            row.resize(rows.columns.size());
            if (one.lever != nullptr) {
                row[5] = one.lever->before;
                row[6] = one.lever->after;
                row[7] = 100.0 * one.lever->yield;
                if (one.lever->yield_at_par) row[8] = 100.0 * *one.lever->yield_at_par;
            }
        }
        rows.rows.push_back(std::move(row));
    }
    return rows;
}

} // namespace

writing::Document improvement_questions(const Assessment& route, const Improvements& improvements,
                                        std::size_t top, bool with_key) {
    writing::Document document;
    document.id = with_key ? "improvement_key" : "improvement_questions";
    document.title = "How would you improve this method?";
    document.subtitle = route.route().title;
    const auto levers = by_question(levers_asked(improvements, top));
    const std::vector<Asked> asked = levers.empty() ? std::vector<Asked>() : ask(route, improvements, levers);
    document.machine = tree_of(route, improvements, asked, with_key);
    document.rows = rows_of(route, improvements, asked, with_key);
    std::vector<writing::Block>& blocks = document.blocks;
    if (asked.empty()) {
        blocks.push_back(
            writing::Paragraph{fmt::format("None of the changes tried improves {}: ask about another figure.",
                                           in_sentence(improvements.figure.name()))});
    } else {
        writing::BulletList list;
        list.numbered = true;
        for (const Asked& one : asked)
            list.items.emplace_back(one.question);
        blocks.push_back(writing::Heading{2, "Questions", "questions"});
        blocks.push_back(std::move(list));
        if (with_key) add_key(route, improvements, asked, blocks);
        if (with_key) blocks.push_back(numbers_of(route));
        tell_found_yields(route, blocks);
    }
    blocks.push_back(usual_cautions());
    return document;
}

} // namespace routeweigh
