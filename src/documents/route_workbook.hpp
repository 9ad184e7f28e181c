// SPDX-License-Identifier: MIT
// One route as a spreadsheet that recomputes: amounts, yields and class size may be changed there.
//
// What follows from sums and ratios is live. How far the reactions run is not: amounts on which the
// theoretical yield depends are therefore no inputs of the workbook, and figures that need the streams keep
// their value.
#pragma once

#include "assess/course/class_use.hpp"
#include "writing/workbook.hpp"

namespace routeweigh {

/// Stock, packs and costs start from the class of that use.
writing::Workbook route_workbook(const course::ClassUse& use, const course::House& house);

} // namespace routeweigh
