// SPDX-License-Identifier: MIT
// A document with one of everything, to look at and to try the writers on. All figures in it are invented.
#pragma once

#include "writing/blocks.hpp"

namespace routeweigh::writing {

Document sample_document();

StackedBars sample_bars();
Ribbons sample_ribbons();
DecadeGrid sample_grid();
Intervals sample_intervals();
Curve sample_curve();
Graph sample_graph();

} // namespace routeweigh::writing
