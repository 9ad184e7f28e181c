// SPDX-License-Identifier: MIT
// Where things go: which container takes a stream, where the mass goes, what would change it most.
#include "base/text.hpp"
#include "documents/improvement_words.hpp"
#include "documents/inputs.hpp"
#include "documents/number.hpp"
#include "documents/questions/kinds.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

constexpr std::size_t most_choices = 5;
constexpr std::size_t changes_asked = 8; ///< the first of the list; the dice leave five
constexpr double clear_gain = 0.01; ///< of the figure: the best is so much better than the others; our line

/// The right choice and so many of the others that at most five stand there.
void thin_out(std::vector<Choice>& choices, Dice& dice) {
    while (choices.size() > most_choices) {
        const std::size_t index = dice.below(choices.size());
        if (!choices[index].right) choices.erase(choices.begin() + static_cast<std::ptrdiff_t>(index));
    }
}

/// Names equivalents, loading or yield, which the students' sheets leave for them to work out.
bool gives_away(const Improvement& entry) {
    return entry.candidate.kind == "excess" || entry.candidate.kind == "catalyst" ||
           entry.candidate.kind == "better_yield";
}

} // namespace

Question ask_container(const QuestionSource& source) {
    std::vector<const streams::StreamAdvice*> sorted;
    for (const streams::StreamAdvice& advice : source.experiment.waste().streams)
        if (advice.decision.outcome == streams::Decision::Outcome::container) sorted.push_back(&advice);
    const streams::LocalRules& local = source.experiment.rules().streams.local;
    if (sorted.empty() || local.containers.size() < 2) return {};
    const streams::StreamAdvice& advice = *source.dice.one_of(sorted);
    Question question;
    question.id = "container";
    question.title = "Which container";
    question.text = fmt::format("Into which container goes the stream \"{}\"{}?", advice.stream.title,
                                advice.decision.first.empty() ? "" : ", after what has to be done first");
    for (const streams::Container& container : local.containers) {
        const bool right = advice.decision.kind == container.kind;
        const bool no_liquid = container.kind == streams::ContainerKind::sharps ||
                               container.kind == streams::ContainerKind::product ||
                               container.kind == streams::ContainerKind::recovery;
        if (!right && no_liquid) continue;
        question.choices.push_back(
            {container.name, right,
             right ? ""
                   : fmt::format("it takes {}; this stream: {}", container.takes, advice.decision.summary)});
    }
    thin_out(question.choices, source.dice);
    question.working.push_back(advice.decision.summary);
    for (const streams::Treatment& treatment : advice.decision.first)
        question.working.push_back("first: " + treatment.words);
    question.working.push_back("By the shipped rules; the rules of the house decide.");
    return question;
}

Question ask_waste_per_gram(const QuestionSource& source) {
    const Assessment& assessment = source.assessment();
    const double e_factor = assessment.metric("complete_e_factor");
    if (!(e_factor > 0) || assessment.totals().recovered > 0) return {};
    // Other versions ask for another yield; everything charged stays.
    const double factor = source.dice.between(0.7, 1.0);
    const double product = as_printed(assessment.evaluation().product * factor);
    const double total = as_printed(assessment.evaluation().product * (1 + e_factor), 4);
    const double dry = assessment.metric("e_factor_without_water");
    Question question;
    question.id = "waste_per_gram";
    question.title = "Waste per gram of product";
    question.text =
        fmt::format("In one run of the whole route {} g are charged, water, washes and solvents included, "
                    "and nothing is put to use again. {} g of product are isolated. How many grams of "
                    "waste leave for one gram of product (complete E-factor)?",
                    digits(total, 4), digits(product, 3));
    question.answer = (total - product) / product;
    question.unit = "g/g";
    question.wrong = {{total / product, "forgot to take off the product: that is the process mass intensity"},
                      {(total - product) / total, "divided by what was charged, not by the product"},
                      {100 * product / total, "gave the share of product in per cent"}};
    if (std::isfinite(dry)) question.wrong.push_back({(dry + 1) / factor - 1, "left the water out"});
    if (question.answer < 2)
        question.wrong.clear(); // then PMI and E lie too near each other to tell a mistake
    question.working = {fmt::format("({} g − {} g) / {} g = {}", digits(total, 4), digits(product, 3),
                                    digits(product, 3), digits(question.answer, 3))};
    return question;
}

Question ask_largest_part(const QuestionSource& source) {
    const PurposeInputs inputs = inputs_by_purpose(source.assessment());
    std::vector<std::pair<double, Purpose>> parts;
    for (std::size_t i = 0; i < purpose_count; ++i)
        if (inputs[i].grams > 0) parts.emplace_back(inputs[i].grams, static_cast<Purpose>(i));
    std::sort(parts.begin(), parts.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    if (parts.size() < 3 || parts[0].first < 1.1 * parts[1].first) return {};
    Question question;
    question.id = "largest_part";
    question.title = "Where the mass goes";
    question.text = "Which purpose takes the most mass for one gram of product, water included?";
    for (const auto& [grams, purpose] : parts)
        question.choices.push_back(
            {std::string(words(purpose)), purpose == parts[0].second,
             purpose == parts[0].second ? "" : fmt::format("{} g/g", digits(grams, 3))});
    for (const auto& [grams, purpose] : parts)
        question.working.push_back(fmt::format("{}: {} g/g", words(purpose), digits(grams, 3)));
    thin_out(question.choices, source.dice);
    return question;
}

Question ask_best_change(const QuestionSource& source) {
    if (source.improvements == nullptr) return {};
    const Improvements& found = *source.improvements;
    std::vector<const Improvement*> asked; // the best first
    for (const auto* list : {&found.ranked, &found.no_help})
        for (const Improvement& entry : *list)
            if (!gives_away(entry)) asked.push_back(&entry);
    if (asked.size() < 2 || asked.front()->gain < clear_gain * found.value) return {};
    const Improvement& best = *asked.front();
    // What lies too near the best could be called as right.
    std::erase_if(asked, [&](const Improvement* entry) {
        return entry != &best && best.gain - entry->gain < clear_gain * found.value;
    });
    asked.resize(std::min(asked.size(), changes_asked));
    if (asked.size() < 2) return {};
    Question question;
    question.id = "best_change";
    question.title = "The best single change";
    question.text = fmt::format("The route leaves {} g of waste for one gram of product. Which one of these "
                                "changes lowers that most, if everything else stays as it is?",
                                digits(found.value, 3));
    for (const Improvement* entry : asked) {
        const std::string after = digits(entry->after, 3);
        question.choices.push_back({entry->candidate.what, entry == &best,
                                    entry == &best ? "" : fmt::format("leads to {} g/g only", after)});
        question.working.push_back(fmt::format("{}: {} g/g", entry->candidate.what, after));
    }
    question.working.push_back("Arithmetic only." + documents::dangers_and_tests(best.candidate));
    thin_out(question.choices, source.dice);
    return question;
}

} // namespace routeweigh::documents
