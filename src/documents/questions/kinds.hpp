// SPDX-License-Identifier: MIT
// The kinds of questions, one function each; question_list.cpp is their order.
#pragma once

#include "documents/questions/question.hpp"

namespace routeweigh::documents {

// Amounts of one step.
Question ask_limiting_reagent(const QuestionSource& source);
Question ask_theoretical_yield(const QuestionSource& source);
Question ask_percent_yield(const QuestionSource& source);

// What a bottle holds.
Question ask_solution(const QuestionSource& source);
Question ask_hydrate(const QuestionSource& source);
Question ask_equivalents(const QuestionSource& source);

// Where things go.
Question ask_container(const QuestionSource& source);
Question ask_waste_per_gram(const QuestionSource& source);
Question ask_largest_part(const QuestionSource& source);
Question ask_best_change(const QuestionSource& source);

// What a result says.
Question ask_above_hundred(const QuestionSource& source);
Question ask_overall_yield(const QuestionSource& source);
Question ask_atom_economy(const QuestionSource& source);

} // namespace routeweigh::documents
