// SPDX-License-Identifier: MIT
// Every metric, in reading order. A new one is a file in metrics/ and a line in metric_list.cpp.
#pragma once

#include "assess/metric.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace routeweigh {

/// Ratios first need no other figure; a derived metric stands after all it is derived from.
std::span<const Metric* const> all_metrics();

/// Index in all_metrics(), or -1.
int metric_index(std::string_view id);

/// Values of all metrics in their order; NaN where a figure has no value.
template<Number N>
void evaluate_metrics(const TotalsOf<N>& totals, std::span<N> values);

} // namespace routeweigh
