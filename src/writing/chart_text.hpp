// SPDX-License-Identifier: MIT
// Charts in fixed-pitch characters for a terminal; the marks are plain ASCII.
#pragma once

#include "writing/chart.hpp"
#include "writing/ink.hpp"

#include <string>
#include <vector>

namespace routeweigh::writing {

/// Bars, intervals and grids as marks with their figures; ribbons as bars by flow; curves and graphs as their
/// table.
std::vector<std::string> chart_text(const Chart& chart, int width, const Ink& ink);

} // namespace routeweigh::writing
