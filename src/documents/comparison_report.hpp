// SPDX-License-Identifier: MIT
// The report that compares routes: its sections in reading order, and the data behind it for programs.
#pragma once

#include "compare/comparison.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

/// Who will read the document; what the other would read is left out, for it costs time.
enum class Reader { people, programs, both };

writing::Document comparison_report(const Comparison& comparison, Reader reader = Reader::both);

} // namespace routeweigh
