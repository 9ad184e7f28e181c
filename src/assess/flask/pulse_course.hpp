// SPDX-License-Identifier: MIT
// How much of a substance is there at a time, when it comes in portions and goes by first order.
//
// One portion is A -> B -> gone with the closed solution of two consecutive first-order reactions; B is what
// is counted. Portions do not know of each other, so their solutions add up.
#pragma once

#include <limits>
#include <vector>

namespace routeweigh {

struct FedPortion {
    double from = 0, until = 0; ///< s; equal: all at once, else evenly between
    double amount = 0;          ///< mol of B that it can make
    double used = 0;            ///< 1/s; 0: what is made stays
};

/// Made as soon as it is added.
inline constexpr double at_once = std::numeric_limits<double>::infinity();

/// mol of B at a time. \param made  1/s, or at_once  \param t  s
double present(const std::vector<FedPortion>& portions, double made, double t);

} // namespace routeweigh
