// SPDX-License-Identifier: MIT
// How documents print numbers: with a true minus, and never more digits than the figure has.
#pragma once

#include "assess/figure_pick.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <string_view>

namespace routeweigh::documents {

/// Columns of numbers.
inline constexpr auto decimal = writing::Align::decimal;

/// "−0.5": so many digits behind the point. What rounds to nothing has no sign.
std::string fixed(double value, int decimals);

/// Three significant digits, or as many as asked for; no exponent between 0.0001 and a million.
std::string digits(double value, int significant = 3);

/// The decimals that the figure asks for; more where fewer than two significant digits would be left, fewer
/// where there would be more than four. "< 0.001" for what is far below the last decimal.
std::string figure_text(double value, int decimals);

/// With its sign: "+2.4", "−12.1", "0.0".
std::string difference_text(double value, int decimals);

/// The same for the difference of two figures, no finer than either of them is printed.
std::string difference_text(double value, double baseline, int decimals);

/// "85 %" from 0.85.
std::string percent(double share, int decimals = 0);

/// "m3 air" as it is printed.
std::string unit_text(std::string_view unit);

/// The number with its unit: "53.4 g/g".
writing::Run quantity(double value, int decimals, std::string_view unit);

/// "46.7 g/g": a figure as it is printed, with its unit.
std::string value_text(const FigurePick& figure, double value);

/// A plain number in a table.
writing::Cell number_cell(double value, int decimals);
writing::Cell digits_cell(double value, int significant = 3);

} // namespace routeweigh::documents
