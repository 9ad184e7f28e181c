// SPDX-License-Identifier: MIT
// The results of a class as a spreadsheet: masses may be corrected there, and yields and their spread follow.
#pragma once

#include "assess/results/class_results.hpp"
#include "writing/workbook.hpp"

namespace routeweigh {

/// \pre results.all_kept: longer classes do not hold their rows
writing::Workbook class_results_workbook(const Route& route, const results::ClassResults& results);

} // namespace routeweigh
