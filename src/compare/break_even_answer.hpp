// SPDX-License-Identifier: MIT
// At which value of one input of a route a figure reaches a target, put into the words of the route.
#pragma once

#include "assess/figure_pick.hpp"
#include "compare/break_even.hpp"
#include "compare/numeric_input.hpp"
#include "compare/trial.hpp"

#include <string>
#include <vector>

namespace routeweigh {

struct BreakEvenAnswer {
    NumericInput input;
    BreakEvenSearch search;
    std::string low_reason, high_reason;        ///< why the route cannot be worked beyond an end that is cut
    double equivalents = 0;                     ///< of the amount as written; 0 where none are counted
    std::vector<BreakEvenSearch::Point> window; ///< the figure around the value as written and the roots
};

/// Every value is put into the file and the file read again, so that a root found is one that a route file
/// may have, and every check of a route applies.
BreakEvenAnswer answer_break_even(const Assessment& assessment, const NumericInput& input,
                                  const FigurePick& figure, double target, const Apply& apply);

} // namespace routeweigh
