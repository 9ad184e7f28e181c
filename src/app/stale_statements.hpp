// SPDX-License-Identifier: MIT
// What a route file says of a number ends with the number: its spread, how that is correlated, and what its
// source calls it.
#pragma once

#include "base/assignment.hpp"
#include "route/route.hpp"

#include <vector>

namespace routeweigh {

/// Takes out the spreads of the numbers in whose place others are put that bring none, and the correlations
/// of these spreads. To be assigned before the changes, which may move what stands in a list.
std::vector<Assignment> stale_spreads(const Route& route, const std::vector<Assignment>& changes);

/// Takes out what papers would print of an amount that was: "given_as", "source", and a note with a figure in
/// it ("in three portions of 5 mL"). To be assigned before the changes.
std::vector<Assignment> stale_words(const Route& route, const std::vector<Assignment>& changes);

} // namespace routeweigh
