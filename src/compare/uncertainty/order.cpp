// SPDX-License-Identifier: MIT
#include "compare/uncertainty/order.hpp"

#include "compare/uncertainty/parallel.hpp"

#include <algorithm>
#include <cstdint>

namespace routeweigh {

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
        // By route and draw: routes that are better. As wide as the numbers compared, so that several draws
        // are counted by one instruction.
        std::vector<std::uint64_t>& ahead = scratch_[worker];
        ahead.assign(routes_ * batch.draws, 0);
        for (std::size_t i = 0; i < routes_; ++i)
            for (std::size_t j = i + 1; j < routes_; ++j) {
                // The route of the smaller number wins in both.
                const std::size_t one = lower ? i : j, other = lower ? j : i;
                const double* a = batch.column(i * better_.size() + figure).data();
                const double* b = batch.column(j * better_.size() + figure).data();
                std::uint64_t* before_one = ahead.data() + one * batch.draws;
                std::uint64_t* before_other = ahead.data() + other * batch.draws;
                std::uint64_t one_won = 0, other_won = 0;
                for (std::size_t d = 0; d < batch.draws; ++d) {
                    const std::uint64_t one_wins = a[d] < b[d] ? 1 : 0, other_wins = b[d] < a[d] ? 1 : 0;
                    one_won += one_wins;
                    other_won += other_wins;
                    before_other[d] += one_wins;
                    before_one[d] += other_wins;
                }
                counts.beats[one * routes_ + other] += one_won;
                counts.beats[other * routes_ + one] += other_won;
            }
        for (std::size_t i = 0; i < routes_; ++i)
            for (std::size_t d = 0; d < batch.draws; ++d)
                ++counts.ranks[i * routes_ + ahead[i * batch.draws + d]];
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
