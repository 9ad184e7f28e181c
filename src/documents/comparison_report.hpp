// SPDX-License-Identifier: MIT
// The report that compares routes: its sections in reading order, and the data behind it for programs.
#pragma once

#include "compare/comparison.hpp"
#include "writing/blocks.hpp"

#include <vector>

namespace routeweigh {

struct Improvements;

/// Only what the reader will see of it is filled in.
/// \param improvements  one a route, in their order, for people; nullptr: nobody worked them out
writing::Document comparison_report(const Comparison& comparison,
                                    writing::Reader reader = writing::Reader::anyone,
                                    const std::vector<Improvements>* improvements = nullptr);

} // namespace routeweigh
