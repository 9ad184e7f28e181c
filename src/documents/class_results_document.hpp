// SPDX-License-Identifier: MIT
// The results of a class: what they sum up to, what to look at, and what to test next.
#pragma once

#include "assess/results/class_results.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

writing::Document class_results_document(const Assessment& route, const results::ClassResults& results);

} // namespace routeweigh
