// SPDX-License-Identifier: MIT
#include "compare/uncertainty/order.hpp"

#include "compare/uncertainty/parallel.hpp"

#include <algorithm>
#include <limits>
#include <span>

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

} // namespace

OrderCounter::OrderCounter(const FigureHeads& heads, std::size_t routes, int threads)
    : routes_(routes), threads_(threads), counts_(heads.count()),
      scratch_(static_cast<std::size_t>(std::max(1, threads))) {
    for (const Figure& figure : heads.list)
        better_.push_back(figure.better);
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
        for (std::size_t i = 0; i < routes_; ++i)
            for (std::size_t j = i + 1; j < routes_; ++j) {
                // The route of the smaller number wins in both.
                const std::size_t one = lower ? i : j, other = lower ? j : i;
                const std::span<const double> a = batch.column(i * better_.size() + figure);
                const std::span<const double> b = batch.column(j * better_.size() + figure);
                Lanes* before_one = ahead.data() + one * blocks;
                Lanes* before_other = ahead.data() + other * blocks;
                Lanes one_won = 0.0, other_won = 0.0;
                for (std::size_t block = 0; block < blocks; ++block) {
                    const Lanes x = block_of(a, block), y = block_of(b, block);
                    const Lanes one_wins = choose(x < y, Lanes(1.0), Lanes(0.0)),
                                other_wins = choose(y < x, Lanes(1.0), Lanes(0.0));
                    one_won += one_wins;
                    other_won += other_wins;
                    before_other[block] += one_wins;
                    before_one[block] += other_wins;
                }
                counts.beats[one * routes_ + other] += sum(one_won);
                counts.beats[other * routes_ + one] += sum(other_won);
            }
        for (std::size_t i = 0; i < routes_; ++i)
            for (std::size_t d = 0; d < batch.draws; ++d)
                ++counts.ranks[i * routes_ +
                               static_cast<std::size_t>(ahead[i * blocks + d / lane_count][d % lane_count])];
    });
}

std::vector<FigureOrder> OrderCounter::result() const {
    std::vector<FigureOrder> result;
    for (const Counts& counts : counts_) {
        FigureOrder& order = result.emplace_back();
        order.routes = routes_;
        for (const std::size_t count : counts.beats)
            order.beats.push_back(static_cast<double>(count) / static_cast<double>(draws_));
        for (const std::size_t count : counts.ranks)
            order.ranks.push_back(static_cast<double>(count) / static_cast<double>(draws_));
    }
    return result;
}

} // namespace routeweigh
