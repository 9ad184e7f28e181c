// SPDX-License-Identifier: MIT
// The yields of a class in figures: spread, dots, sections against each other, what stands out.
#pragma once

#include "assess/results/class_results.hpp"
#include "writing/blocks.hpp"

#include <vector>

namespace routeweigh::documents {

/// \pre some row has a yield
void add_class_yields(const results::ClassResults& results, std::vector<writing::Block>& blocks);

} // namespace routeweigh::documents
