// SPDX-License-Identifier: MIT
#include "compare/uncertainty/order.hpp"

#include "compare/uncertainty/parallel.hpp"

#include <algorithm>

namespace routeweigh {
namespace {

/// Of counts.
std::size_t sum(const Lanes& counts) {
    double result = 0.0;
    for (std::size_t lane = 0; lane < lane_count; ++lane)
        result += counts[lane];
    return static_cast<std::size_t>(result);
}

} // namespace

static_assert(batch_draws % lane_count == 0);

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
        const std::size_t blocks = batch.draws / lane_count;
        std::vector<Lanes>& ahead = scratch_[worker]; // by route and block of draws: routes that are better
        ahead.assign(routes_ * blocks, Lanes(0.0));
        for (std::size_t i = 0; i < routes_; ++i)
            for (std::size_t j = i + 1; j < routes_; ++j) {
                // The route of the smaller number wins in both.
                const std::size_t one = lower ? i : j, other = lower ? j : i;
                const double* a = batch.column(i * better_.size() + figure).data();
                const double* b = batch.column(j * better_.size() + figure).data();
                Lanes* before_one = ahead.data() + one * blocks;
                Lanes* before_other = ahead.data() + other * blocks;
                Lanes one_won = 0.0, other_won = 0.0;
                for (std::size_t block = 0; block < blocks; ++block) {
                    const Lanes x = Lanes::load(a + block * lane_count),
                                y = Lanes::load(b + block * lane_count);
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
