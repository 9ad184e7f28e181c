// SPDX-License-Identifier: MIT
// The report that compares routes: its sections in reading order, and the data behind it for programs.
#pragma once

#include "compare/uncertainty/certainty.hpp"
#include "writing/blocks.hpp"

#include <vector>

namespace routeweigh {

struct Improvements;

/// What takes longer than the figures and is worked out before, or left out.
struct ReportStudies {
    const Certainty* certainty = nullptr;                    ///< intervals and shares of runs
    const std::vector<Improvements>* improvements = nullptr; ///< one a route, in their order, for people
};

/// Only what the reader will see of it is filled in.
writing::Document comparison_report(const Comparison& comparison,
                                    writing::Reader reader = writing::Reader::anyone,
                                    const ReportStudies& studies = {});

} // namespace routeweigh
