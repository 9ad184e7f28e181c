// SPDX-License-Identifier: MIT
// How often each step has to be run so that the last step gets its intermediates.
//
// Runs x solve x_up = sum over the steps fed of need(up, down) / yield(up) * x_down, with 1 run of the last
// step. Taken in topological order this is substitution; where a later step feeds an earlier one, the
// strongly connected component is solved as a linear system.
#pragma once

#include "base/lanes.hpp"

#include <span>
#include <vector>

namespace routeweigh {

class ScalePlan {
  public:
    struct Feed {
        int from, to; ///< `from` makes what `to` uses
    };
    ScalePlan() = default;
    ScalePlan(int step_count, int final_step, std::vector<Feed> feeds);

    int final_step() const { return final_step_; }
    std::span<const Feed> feeds() const { return feeds_; }

    /// Steps in the order in which their runs can be found: every step after all that it feeds, loops
    /// together.
    std::span<const std::vector<int>> groups() const { return groups_; }

    /// Some step feeds, through others or directly, one that feeds it.
    bool has_loop() const;

    /// \param ratios  by feed: runs of `from` for one run of `to`
    /// \param runs  by step, overwritten
    /// \return false when a loop uses up at least as much as it makes
    bool solve(std::span<const double> ratios, std::span<double> runs) const {
        bool alike = true;
        return solve(ratios, runs, alike);
    }
    /// \param alike  see agree(); a loop is solved for one draw only
    template<Number N>
    bool solve(std::span<const N> ratios, std::span<N> runs, bool& alike) const;

    /// Steps on the longest linear sequence that ends in the last step, first to last.
    /// Of equally long sequences the one whose product of \p yields is smallest.
    std::vector<int> longest_sequence(std::span<const double> yields) const;

  private:
    bool solve_loop(const std::vector<int>& group, std::span<const double> ratios,
                    std::span<double> runs) const;

    int step_count_ = 0, final_step_ = 0;
    std::vector<Feed> feeds_;
    std::vector<std::vector<int>> feeds_from_; ///< by step: indices of feeds that leave it
    std::vector<std::vector<int>> groups_;
    std::vector<bool> loops_; ///< by group: more than a single step that feeds nothing of its own
};

} // namespace routeweigh
