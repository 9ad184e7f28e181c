// SPDX-License-Identifier: MIT
// What a route file says of a number ends with the number: its spread, and how that is correlated.
#pragma once

#include "base/assignment.hpp"
#include "route/route.hpp"

#include <vector>

namespace routeweigh {

/// Takes out the spreads of the numbers in whose place others are put that bring none, and the correlations
/// of these spreads. To be assigned before the changes, which may move what stands in a list.
std::vector<Assignment> stale_spreads(const Route& route, const std::vector<Assignment>& changes);

} // namespace routeweigh
