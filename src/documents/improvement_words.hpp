// SPDX-License-Identifier: MIT
// How an improvement is put into words, for the document of its own, the student's key and the report.
#pragma once

#include "compare/improvement.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

/// "−3.4 (−7 %)".
std::string effect_text(const FigurePick& figure, double before, double change);

/// What a table says of an improvement: the figure then, the difference, the change in per cent, and the loss
/// of yield that would eat the gain.
std::vector<writing::Column> effect_columns(const FigurePick& figure);
std::vector<writing::Cell> effect_cells(const FigurePick& figure, const Improvement& entry);

/// "none seen by this method", or "fire, bottle (d 1.20 to 1.35)" one after the other; then what is left
/// over of it: "left over then: 0.13 g bromine (0 g before)".
std::string added_text(const Improvement& entry);

/// " Look out: ... To test: ..."; nothing is looked out for where no danger is known.
std::string dangers_and_tests(const Candidate& candidate);

/// Said wherever an improvement is shown.
inline constexpr std::string_view untested = "untested; yield assumed unchanged";

/// One of those shown changes the yield itself, which then is not assumed unchanged.
bool changes_yield(const Improvements& improvements);

/// `untested`, save for the change of the yield itself.
std::string standing_of(const Improvements& improvements);

/// The yields that were found and not assumed, with their notes: "mean of 5 results".
void tell_found_yields(const Assessment& route, std::vector<writing::Block>& blocks);

} // namespace routeweigh::documents
