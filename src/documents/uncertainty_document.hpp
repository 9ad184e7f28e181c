// SPDX-License-Identifier: MIT
// The figures of one or several routes with their uncertainty, and the budget of those that are asked for.
#pragma once

#include "compare/uncertainty/certainty.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <vector>

namespace routeweigh {

/// \param figures  ids of which the budget is printed, and whose variance is shared out among the inputs
/// \pre every id is one of the model's figures
writing::Document uncertainty_document(const Comparison& comparison, const Certainty& certainty,
                                       const std::vector<std::string>& figures);

} // namespace routeweigh
