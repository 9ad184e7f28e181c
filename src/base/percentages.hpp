// SPDX-License-Identifier: MIT
// Shares rounded so that what is printed adds up to exactly 100 %.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace routeweigh {

/// Each share of the whole in parts of `units` (1000 for tenths of a per cent), by the largest remainder:
/// every share is rounded down, and the parts that are missing go to those that lost most; of equal ones to
/// the first. None is off by one part or more. \pre shares are not negative, and one is above zero
std::vector<std::int64_t> largest_remainder(std::span<const double> shares, std::int64_t units);

} // namespace routeweigh
