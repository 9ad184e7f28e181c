// SPDX-License-Identifier: MIT
// How far two ways of scoring put the same routes in the same order.
#pragma once

#include <optional>
#include <span>

namespace routeweigh {

// Kendall's tau-b (M. G. Kendall, Biometrika 1945, 33, 239: ties corrected), from -1 to 1:
//   tau = (C - D) / sqrt((P - T_first) (P - T_second))
// with C concordant and D discordant pairs among all P, and T pairs tied in one list. Empty where one list
// has no two different values. Counted by sorting (W. R. Knight, J. Am. Stat. Assoc. 1966, 61, 436;
// remembered), so that 10,000 routes cost no square. Precondition: both are equally long.
std::optional<double> kendall_tau_b(std::span<const double> first, std::span<const double> second);

} // namespace routeweigh
