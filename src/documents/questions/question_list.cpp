// SPDX-License-Identifier: MIT
#include "documents/number.hpp"
#include "documents/questions/kinds.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace routeweigh::documents {
namespace {

using When = Question::When;

constexpr std::array question_kinds{QuestionKind{"limiting_reagent", When::before, ask_limiting_reagent},
                                    QuestionKind{"theoretical_yield", When::before, ask_theoretical_yield},
                                    QuestionKind{"solution", When::before, ask_solution},
                                    QuestionKind{"hydrate", When::before, ask_hydrate},
                                    QuestionKind{"equivalents", When::before, ask_equivalents},
                                    QuestionKind{"container", When::before, ask_container},
                                    QuestionKind{"percent_yield", When::after, ask_percent_yield},
                                    QuestionKind{"above_hundred", When::after, ask_above_hundred},
                                    QuestionKind{"overall_yield", When::after, ask_overall_yield},
                                    QuestionKind{"atom_economy", When::after, ask_atom_economy},
                                    QuestionKind{"waste_per_gram", When::after, ask_waste_per_gram},
                                    QuestionKind{"largest_part", When::after, ask_largest_part},
                                    QuestionKind{"best_change", When::after, ask_best_change}};

} // namespace

std::span<const QuestionKind> all_question_kinds() {
    return question_kinds;
}

const Choice& Question::right() const {
    return *std::find_if(choices.begin(), choices.end(), [](const Choice& choice) { return choice.right; });
}

double as_printed(double value, int significant) {
    const double unit = std::pow(10.0, std::floor(std::log10(value)) - significant + 1);
    return std::round(value / unit) * unit;
}

std::string answer_text(double value, std::string_view unit) {
    return digits(value, 3) + (unit.empty() ? "" : "\u00A0") + std::string(unit);
}

std::string Question::answer_text() const {
    return is_choice() ? right().text : documents::answer_text(answer, unit);
}

void keep_telling(std::vector<WrongAnswer>& wrong, double answer) {
    // Both intervals of tolerance must stay apart.
    const auto near = [](double a, double b) {
        return std::abs(a - b) <= 2.5 * Question::tolerance * std::max(std::abs(a), std::abs(b));
    };
    std::vector<WrongAnswer> kept;
    for (WrongAnswer& one : wrong) {
        if (!std::isfinite(one.value) || near(one.value, answer)) continue;
        if (std::any_of(kept.begin(), kept.end(),
                        [&](const WrongAnswer& other) { return near(one.value, other.value); }))
            continue;
        kept.push_back(std::move(one));
    }
    wrong = std::move(kept);
}

QuestionSet make_questions(const bench::Experiment& experiment, const Improvements* improvements, int seed,
                           int version) {
    QuestionSet set{seed, version, {}};
    int stream = 0;
    for (const QuestionKind& kind : question_kinds) {
        // A stream of its own, so that a new kind of question changes no other.
        Dice dice(seed, version, ++stream);
        const bench::BenchStep& step = dice.one_of(experiment.steps());
        Question question = kind.make({experiment, step, dice, improvements});
        if (question.id.empty()) continue;
        question.id = kind.id;
        question.when = kind.when;
        keep_telling(question.wrong, question.answer);
        dice.shuffle(question.choices);
        set.questions.push_back(std::move(question));
    }
    return set;
}

} // namespace routeweigh::documents
