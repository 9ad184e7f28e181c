// SPDX-License-Identifier: MIT
// The report that compares routes: its sections in reading order, and the data behind it for programs.
#pragma once

#include "compare/uncertainty/certainty.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

/// Only what the reader will see of it is filled in.
/// \param certainty  nullptr: without intervals and shares of runs
writing::Document comparison_report(const Comparison& comparison,
                                    writing::Reader reader = writing::Reader::anyone,
                                    const Certainty* certainty = nullptr);

} // namespace routeweigh
