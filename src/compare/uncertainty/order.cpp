// SPDX-License-Identifier: MIT
#include "compare/uncertainty/order.hpp"

#include "compare/uncertainty/parallel.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <utility>

namespace routeweigh {
namespace {

/// Of counts.
std::size_t sum(const Lanes& counts) {
    double result = 0.0;
    for (std::size_t lane = 0; lane < lane_count; ++lane)
        result += counts[lane];
    return static_cast<std::size_t>(result);
}

/// The draws of one block. What the last one lacks is no number and beats nothing.
Lanes block_of(std::span<const double> column, std::size_t block) {
    const std::size_t first = block * lane_count;
    if (first + lane_count <= column.size()) return Lanes::load(column.data() + first);
    Lanes result = std::numeric_limits<double>::quiet_NaN();
    for (std::size_t d = first; d < column.size(); ++d)
        result.set(d - first, column[d]);
    return result;
}

/// The least and the greatest value of a batch.
struct Range {
    double low, high;

    /// Values of the two that are no further apart are equal.
    double margin(const Range& other) const {
        const double greatest =
            std::max({std::abs(low), std::abs(high), std::abs(other.low), std::abs(other.high)});
        return std::isfinite(greatest) ? rounding_of_figures * greatest : 0.0;
    }
    /// No draw of this one reaches any of the other.
    bool below(const Range& other) const { return high + margin(other) < other.low; }
    /// All draws of both are equal.
    bool ties_with(const Range& other) const {
        return std::max(high, other.high) - std::min(low, other.low) <= margin(other);
    }
};

/// Where a draw is no finite number, everything: then nothing is known without counting.
Range range_of(std::span<const double> column) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    Lanes low = infinity, high = -infinity, nothing = 0.0;
    std::size_t d = 0;
    for (; d + lane_count <= column.size(); d += lane_count) {
        const Lanes x = Lanes::load(column.data() + d);
        low = choose(x < low, x, low);
        high = choose(high < x, x, high);
        nothing += x - x;
    }
    Range result{infinity, -infinity};
    const auto take = [&](double least, double most, double zero) {
        if (zero != 0.0) { // x - x of what is not finite
            least = -infinity;
            most = infinity;
        }
        result.low = std::min(result.low, least);
        result.high = std::max(result.high, most);
    };
    for (std::size_t lane = 0; lane < lane_count; ++lane)
        take(low[lane], high[lane], nothing[lane]);
    for (; d < column.size(); ++d)
        take(column[d], column[d], column[d] - column[d]);
    return result;
}

/// Draws in which the smaller number is the first's, and the other's, by more than the margin. To each are
/// added, by block, the draws in which the other one has it.
std::pair<std::size_t, std::size_t> count_wins(std::span<const double> one, std::span<const double> other,
                                               double margin, Lanes* before_one, Lanes* before_other) {
    Lanes one_won = 0.0, other_won = 0.0;
    const std::size_t blocks = (one.size() + lane_count - 1) / lane_count;
    for (std::size_t block = 0; block < blocks; ++block) {
        const Lanes x = block_of(one, block), y = block_of(other, block);
        const Lanes one_wins = choose(x + margin < y, Lanes(1.0), Lanes(0.0)),
                    other_wins = choose(y + margin < x, Lanes(1.0), Lanes(0.0));
        one_won += one_wins;
        other_won += other_wins;
        before_other[block] += one_wins;
        before_one[block] += other_wins;
    }
    return {sum(one_won), sum(other_won)};
}

} // namespace

OrderCounter::OrderCounter(const FigureHeads& heads, std::size_t routes, std::size_t baseline,
                           std::span<const std::size_t> ranked, int threads)
    : routes_(routes), baseline_(baseline), ranked_(heads.count(), false), threads_(threads),
      counts_(heads.count()), scratch_(static_cast<std::size_t>(std::max(1, threads))) {
    for (const Figure& figure : heads.list)
        better_.push_back(figure.better);
    for (const std::size_t figure : ranked)
        ranked_[figure] = true;
    for (Counts& counts : counts_)
        counts.beats = counts.ranks = std::vector<std::size_t>(routes * routes, 0);
}

void OrderCounter::add(const DrawBatch& batch) {
    draws_ += batch.draws;
    for_each_piece(threads_, better_.size(), [&](std::size_t worker, std::size_t figure) {
        if (better_[figure] == Better::neither) return;
        const bool lower = better_[figure] == Better::lower;
        Counts& counts = counts_[figure];
        const std::size_t blocks = (batch.draws + lane_count - 1) / lane_count;
        std::vector<Lanes>& ahead = scratch_[worker]; // by route and block of draws: routes that are better
        ahead.assign(routes_ * blocks, Lanes(0.0));
        std::vector<Range> ranges;
        for (std::size_t i = 0; i < routes_; ++i)
            ranges.push_back(range_of(batch.column(i * better_.size() + figure)));
        std::vector<std::size_t> ahead_always(routes_, 0); // by route: routes that are better in every draw
        for (std::size_t i = 0; i < routes_; ++i)
            for (std::size_t j = i + 1; j < routes_; ++j) {
                if (!ranked_[figure] && i != baseline_ && j != baseline_) continue;
                if (ranges[i].ties_with(ranges[j])) continue;
                if (ranges[i].below(ranges[j]) || ranges[j].below(ranges[i])) {
                    const bool first_wins = ranges[i].below(ranges[j]) == lower;
                    const std::size_t winner = first_wins ? i : j, other = first_wins ? j : i;
                    counts.beats[winner * routes_ + other] += batch.draws;
                    ++ahead_always[other];
                    continue;
                }
                // The route of the smaller number wins in both.
                const std::size_t one = lower ? i : j, other = lower ? j : i;
                const auto [one_won, other_won] = count_wins(
                    batch.column(i * better_.size() + figure), batch.column(j * better_.size() + figure),
                    ranges[i].margin(ranges[j]), ahead.data() + one * blocks, ahead.data() + other * blocks);
                counts.beats[one * routes_ + other] += one_won;
                counts.beats[other * routes_ + one] += other_won;
            }
        for (std::size_t i = 0; i < routes_ && ranked_[figure]; ++i)
            for (std::size_t d = 0; d < batch.draws; ++d)
                ++counts.ranks[i * routes_ + ahead_always[i] +
                               static_cast<std::size_t>(ahead[i * blocks + d / lane_count][d % lane_count])];
    });
}

std::vector<FigureOrder> OrderCounter::result() const {
    std::vector<FigureOrder> result;
    for (std::size_t figure = 0; figure < counts_.size(); ++figure) {
        const Counts& counts = counts_[figure];
        FigureOrder& order = result.emplace_back();
        order.routes = routes_;
        order.ranked = ranked_[figure];
        for (const std::size_t count : counts.beats)
            order.beats.push_back(static_cast<double>(count) / static_cast<double>(draws_));
        for (const std::size_t count : counts.ranks)
            order.ranks.push_back(static_cast<double>(count) / static_cast<double>(draws_));
    }
    return result;
}

} // namespace routeweigh
