// SPDX-License-Identifier: MIT
// A quench plan in words: verdict, order of work, warnings.
#pragma once

#include "assess/streams/quench_plan.hpp"

#include <string_view>

namespace routeweigh::streams {

std::string_view words_of(QuenchPlan::Verdict verdict);

/// Fills `words`, `order` and `warnings` from the numbers of the plan.
/// \param bench_most  mL neutralised at a bench at one time; 0: no line
void describe_quench(QuenchPlan& plan, const QuenchTable& table, double bench_most);

} // namespace routeweigh::streams
