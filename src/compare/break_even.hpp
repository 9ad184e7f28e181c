// SPDX-License-Identifier: MIT
// The values of an input at which a figure reaches a target: every root in a range, by bracketing.
//
// The range is looked through on a grid; where the figure comes near the target between two points without
// passing it, the turning point is sought, so that two roots between points are not missed. Each bracket is
// closed by algorithm 748 (Alefeld, Potra, Shi, ACM Trans. Math. Softw. 1995, 21, 327; Boost.Math).
#pragma once

#include <functional>
#include <span>
#include <vector>

namespace routeweigh {

/// The figure at a value of the input; NaN where the input cannot have that value.
using Response = std::function<double(double)>;

struct BreakEvenSearch {
    struct Point {
        double input, figure;
    };
    std::vector<double> roots; ///< ascending
    std::vector<double> jumps; ///< where the figure leaps over the target and equals it nowhere
    bool everywhere = false;   ///< the figure equals the target at every input
    bool constant = false;     ///< the figure does not depend on the input
    double low = 0, high = 0;  ///< ends of the range in which the figure has a value; low > high: nowhere
    bool low_cut = false, high_cut = false; ///< that end lies inside the range asked for
    std::vector<Point> curve;               ///< ascending, the roots among them
};

/// \param through  inputs that must be among the points looked at, such as the one as written
BreakEvenSearch find_break_even(const Response& figure, double target, double low, double high,
                                std::span<const double> through = {});

} // namespace routeweigh
