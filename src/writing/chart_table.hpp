// SPDX-License-Identifier: MIT
// The table of a chart's data, so that every picture can also be read as numbers.
#pragma once

#include "writing/blocks.hpp"

namespace routeweigh::writing {

/// Without a caption. Long curves are thinned to a dozen points a line; the markers are remarks below the
/// table.
Table chart_table(const Chart& chart);

/// "hydrogen peroxide + 2 hydrogen bromide": what enters or leaves one square of a graph.
std::string side_of_square(const Graph& graph, std::size_t square, bool entering);

} // namespace routeweigh::writing
