// SPDX-License-Identifier: MIT
// Under how many of all possible weightings a route is first by the hazard score.
//
// A weighting gives each cell of endpoint and place a weight of 0 or above; they sum to 1, and all such lists
// count as equally likely (uniform on the simplex). The score of a route is the weighted mean of its decades.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace routeweigh {

/// Share of all weightings w under which the sum of w_i d_i is at most 0: the part of a simplex that a plane
/// cuts off. Exact but for rounding, every term positive (G. Varsi, Siam J.
/// Appl. Math. 1973, 25, 317; M. M. Ali, Canad. J. Math. 1973, 25, 331; remembered). A d of 0 counts with
/// those above; where all are 0, the result is 0.5 by agreement.
double share_of_weightings_below(std::span<const double> differences);

/// By how much (decades) a route can lead its closest rival at the weighting that suits it best, from a
/// linear programme; 0 where no weighting puts it strictly first.
double best_lead(const std::vector<std::vector<double>>& decades, std::size_t route);

/// Share of all weightings under which each route has the least score, by drawing; a tie counts for the first
/// of them. \param decades  by route, then by cell; all of one length
std::vector<double> shares_of_weightings_first(const std::vector<std::vector<double>>& decades,
                                               std::size_t draws, std::uint64_t seed);

} // namespace routeweigh
