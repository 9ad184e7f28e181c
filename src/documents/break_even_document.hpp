// SPDX-License-Identifier: MIT
// At which value of an input a figure of a route equals that of another route, or a target.
#pragma once

#include "assess/assessment.hpp"
#include "compare/break_even_answer.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <vector>

namespace routeweigh {

struct BreakEvenQuestion {
    const Assessment* route = nullptr;
    FigurePick figure;
    double target = 0;
    std::string target_of; ///< id of the route whose figure the target is; empty: a number that was given
};

/// One answer is told in sentences with a curve, several in a table.
writing::Document break_even_document(const BreakEvenQuestion& question,
                                      const std::vector<BreakEvenAnswer>& answers);

} // namespace routeweigh
