// SPDX-License-Identifier: MIT
#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/improvement_words.hpp"
#include "documents/improvements_document.hpp"
#include "documents/inputs.hpp"
#include "documents/number.hpp"
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

writing::BulletList questions(const Assessment& route, const Improvements& improvements,
                              const std::vector<const Improvement*>& levers) {
    writing::BulletList list;
    list.numbered = true;
    list.items.emplace_back(
        "Where does the mass go? Name the purposes (reactants, solvents, drown-out, washing, "
        "purification) in the order of what they take.");
    for (const Improvement* lever : levers)
        list.items.emplace_back(lever->candidate.question +
                                " What would it change, what might it break, and how would you test that?");
    list.items.emplace_back(
        fmt::format("Put these changes in the order of what they would do for the {}. Say why.",
                    in_sentence(improvements.figure.name())));
    list.items.emplace_back(
        "For the first of your list: how much yield could be lost before the gain is gone? Give a "
        "formula first, then a number.");
    if (route.yield_assumed())
        list.items.emplace_back("The yield of the procedure is assumed. Which of your answers depend on it?");
    return list;
}

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

/// "(91.5 g - ...) / 1.71 g": the ratio with the numbers put in, before and after.
std::string worked(const Improvements& improvements, const Improvement& entry) {
    const FigurePick& figure = improvements.figure;
    const auto ratio = [&](const FigurePick::Ratio& parts, double value) {
        const std::string factor = parts.factor == 1.0 ? "" : fmt::format("{} × ", digits(parts.factor, 4));
        return fmt::format("{}{} / {} = {}", factor, digits(parts.above, 4), digits(parts.below, 4),
                           value_text(figure, value));
    };
    if (!improvements.ratio || !entry.ratio)
        return fmt::format("{} before, {} after.", value_text(figure, entry.before),
                           value_text(figure, entry.after));
    return fmt::format("Before: {}. After: {}.", ratio(*improvements.ratio, entry.before),
                       ratio(*entry.ratio, entry.after));
}

void add_key(const Assessment& route, const Improvements& improvements,
             const std::vector<const Improvement*>& levers, std::vector<writing::Block>& blocks) {
    writing::BulletList list;
    list.numbered = true;
    list.items.emplace_back(mass_answer(route));
    for (const Improvement* lever : levers) {
        writing::Text text{writing::strong(capitalised(lever->candidate.what) + "."),
                           writing::Run(" " + worked(improvements, *lever)),
                           writing::Run(" To test: " + join(lever->candidate.cautions, "; ") + "."),
                           writing::Run(" Hazard added: " + added_text(*lever) + ".")};
        list.items.push_back(std::move(text));
    }
    std::vector<const Improvement*> ranked = levers;
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const auto* a, const auto* b) { return a->gain > b->gain; });
    std::vector<std::string> order;
    for (const Improvement* lever : ranked)
        order.push_back(
            fmt::format("{}: {}", lever->candidate.what,
                        effect_text(improvements.figure, lever->before, lever->after - lever->before)));
    list.items.emplace_back("In order: " + join(order, "; ") + ".");
    const Improvement& first = *ranked.front();
    std::string loss =
        "With fixed inputs a figure per gram of product goes as one over the yield, so the gain is "
        "gone at yield × after / before.";
    const double ratio = first.yield * first.after / first.before;
    if (first.yield_at_par && std::abs(*first.yield_at_par - ratio) < 1e-6)
        loss += fmt::format(" Here: {} × {} / {} = {} for {}.", percent(first.yield, 1),
                            figure_text(first.after, improvements.figure.decimals()),
                            figure_text(first.before, improvements.figure.decimals()),
                            percent(*first.yield_at_par, 1), first.candidate.what);
    else if (first.yield_at_par)
        loss += fmt::format(
            " Here it is found by computing, for the yield also changes what is there to recover or "
            "what the figure counts: {} for {}.",
            percent(*first.yield_at_par, 1), first.candidate.what);
    list.items.emplace_back(std::move(loss));
    if (route.yield_assumed())
        list.items.emplace_back(
            "Every figure per gram of product does. The order of changes that only take inputs away "
            "does not, as long as the yield is the same for all.");
    blocks.push_back(writing::Heading{2, "Key", "key"});
    blocks.push_back(std::move(list));
    if (route.route().steps.size() > 1) blocks.push_back(amounts_of_steps());
    tell_open_end(route, improvements.figure.id(), blocks);
    blocks.push_back(
        writing::Paragraph{fmt::format("All of it is {}. An answer that names another test, or another "
                                       "order with a reason, is as good.",
                                       untested)});
}

} // namespace

writing::Document improvement_questions(const Assessment& route, const Improvements& improvements,
                                        std::size_t top, bool with_key) {
    writing::Document document;
    document.id = with_key ? "improvement_key" : "improvement_questions";
    document.title = "How would you improve this method?";
    document.subtitle = route.route().title;
    const auto levers = by_question(levers_asked(improvements, top));
    if (levers.empty()) {
        document.blocks.push_back(writing::Paragraph{fmt::format(
            "None of the changes tried improves {}: ask about another figure.", improvements.figure.name())});
        return document;
    }
    document.blocks.push_back(writing::Heading{2, "Questions", "questions"});
    document.blocks.push_back(questions(route, improvements, levers));
    if (with_key) add_key(route, improvements, levers, document.blocks);
    if (with_key) document.blocks.push_back(numbers_of(route));
    document.blocks.push_back(usual_cautions());
    return document;
}

} // namespace routeweigh
