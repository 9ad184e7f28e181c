// SPDX-License-Identifier: MIT
// Questions made from a route: numbers and choices, each with its key and the mistakes that lead elsewhere.
#pragma once

#include "assess/bench/experiment.hpp"
#include "compare/improvement.hpp"
#include "documents/questions/dice.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

/// A number that a mistake leads to.
struct WrongAnswer {
    double value = 0;
    std::string mistake; ///< "took the solution as pure"
};

struct Choice {
    std::string text;
    bool right = false;
    std::string why; ///< of a wrong one: which mistake, or what speaks against it
};

struct Question {
    enum class When { before, after };
    std::string id; ///< of its kind: "theoretical_yield"
    When when = When::before;
    std::string title; ///< in two or three words
    std::string text;
    double answer = 0; ///< of a question for a number
    std::string unit;
    std::vector<WrongAnswer> wrong;
    std::vector<Choice> choices;      ///< empty: the answer is a number
    std::vector<std::string> working; ///< of the answer, line by line

    bool is_choice() const { return !choices.empty(); }
    const Choice& right() const;
    std::string answer_text() const; ///< number with its unit, or the right choice

    static constexpr double tolerance = 0.02; ///< of the answer; room for rounding on the way
};

/// What a kind of question may look at.
struct QuestionSource {
    const bench::Experiment& experiment;
    const bench::BenchStep& step; ///< for questions about one step
    Dice& dice;
    const Improvements* improvements = nullptr; ///< of the complete E-factor; nullptr: it has no value

    const Assessment& assessment() const { return experiment.assessment(); }
};

struct QuestionKind {
    std::string_view id;
    Question::When when;
    /// An empty id where the route gives no such question.
    Question (*make)(const QuestionSource&);
};

std::span<const QuestionKind> all_question_kinds();

struct QuestionSet {
    int seed = 1, version = 1;
    std::vector<Question> questions; ///< those before the experiment first
};

/// The same route, seed and version give the same questions; other versions ask with other numbers.
/// \param improvements  of the complete E-factor, as the command improve finds them; nullptr where there are
/// none
QuestionSet make_questions(const bench::Experiment& experiment, const Improvements* improvements, int seed,
                           int version);

/// Takes out wrong answers that cannot be told from the right one or from each other.
void keep_telling(std::vector<WrongAnswer>& wrong, double answer);

/// Rounded as it is printed, so that the answer follows from what the question says.
double as_printed(double value, int significant = 3);

/// "12.5 mmol".
std::string answer_text(double value, std::string_view unit);

} // namespace routeweigh::documents
