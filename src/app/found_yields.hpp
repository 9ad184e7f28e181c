// SPDX-License-Identifier: MIT
// Results of many hands: a plain list with one yield or one mass a line, or the table of a class.
#pragma once

#include "compare/uncertainty/certainty.hpp"
#include "input/source.hpp"

namespace routeweigh {

/// A file whose first line holds headings is a class table and read as read_results() does: every row that is
/// possible counts, a yield above 100 % by no more than the balance reads as 100 %. Any other is a list: "71
/// %" or "1.52 g" in every line; empty lines and what follows "#" are passed over. The results are of the
/// last step, as shares of 1 of its theoretical yield. \param problems  receives warnings: a column that is
/// not read, rows of a class that do not count \throws InputError with every line or row that cannot be read,
/// a yield above 100 % in a list, nothing to draw from; CallError no such route
FoundYields read_found_yields(const std::string& route_id, const SourcePtr& source,
                              const Comparison& comparison, Problems& problems);

/// The files of these routes, in their order, with the mean of what was found in place of the isolated yield
/// or mass: so every figure rests on it, and none is called assumed.
std::vector<SourcePtr> with_found_yields(const Comparison& comparison, const std::vector<FoundYields>& found);

/// What three quarters of the results do not exceed: share of 1, interpolated as in the statistics of a
/// class.
double upper_quartile(const FoundYields& found);

} // namespace routeweigh
