// SPDX-License-Identifier: MIT
// A quench plan in words: verdict, order of work, warnings.
#pragma once

#include "assess/streams/quench_plan.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::streams {

std::string_view words_of(QuenchPlan::Verdict verdict);

/// Fills `words`, `order`, `warnings` and what is said of heat from the numbers of the plan.
/// \param bench_most  mL neutralised at a bench at one time; 0: no line
void describe_quench(QuenchPlan& plan, const QuenchTable& table, double bench_most);

/// What its heat may do, a line each; none where that is not worth a warning. \pre described
/// \param with_amounts  kJ and K too
std::vector<std::string> heat_words(const QuenchPlan& plan, bool with_amounts);

} // namespace routeweigh::streams
