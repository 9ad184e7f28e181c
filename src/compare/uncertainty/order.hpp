// SPDX-License-Identifier: MIT
// Whether the order of the routes by a figure survives what is not known exactly: how often each route beats
// each other one, and how often it takes each rank, counted on common draws.
#pragma once

#include "base/lanes.hpp"
#include "compare/uncertainty/figure_model.hpp"
#include "compare/uncertainty/monte_carlo.hpp"

#include <span>

namespace routeweigh {

/// Shares of the draws, for one figure.
struct FigureOrder {
    std::size_t routes = 0;
    bool ranked = false;       ///< else only pairs with the baseline are counted, and no ranks
    std::vector<double> beats; ///< by route and other route: strictly better
    /// By route and rank, the best first; routes that tie share the better rank.
    std::vector<double> ranks;

    double share_better(std::size_t route, std::size_t other) const { return beats[route * routes + other]; }
    double share_at_rank(std::size_t route, std::size_t rank) const { return ranks[route * routes + rank]; }
};

/// Counts over batches. Nothing is counted for a figure of which neither end is better. Work grows with the
/// routes, for ranked figures with the pairs of routes that overlap.
class OrderCounter {
  public:
    OrderCounter(const FigureHeads& heads, std::size_t routes, std::size_t baseline,
                 std::span<const std::size_t> ranked, int threads);

    void add(const DrawBatch& batch);
    /// By figure.
    std::vector<FigureOrder> result() const;

  private:
    struct Counts {
        std::vector<std::size_t> beats, ranks;
    };
    std::vector<Better> better_; ///< by figure
    std::size_t routes_, baseline_;
    std::vector<bool> ranked_; ///< by figure
    int threads_;
    std::size_t draws_ = 0;
    std::vector<Counts> counts_;
    std::vector<std::vector<Lanes>> scratch_; ///< by worker: how many routes are better, by route and block
};

} // namespace routeweigh
