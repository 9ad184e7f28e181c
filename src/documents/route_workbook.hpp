// SPDX-License-Identifier: MIT
// One route as a spreadsheet that recomputes: amounts, yields and class size may be changed there.
//
// What follows from sums and ratios is live. How far the reactions run is not: amounts on which the
// theoretical yield depends are therefore no inputs of the workbook, and figures that need the streams keep
// their value.
#pragma once

#include "assess/assessment.hpp"
#include "writing/workbook.hpp"

namespace routeweigh {

/// \param students  pots of the class that the stock sheet starts from
writing::Workbook route_workbook(const Assessment& assessment, int students = 24);

} // namespace routeweigh
