// SPDX-License-Identifier: MIT
#include "compare/uncertainty/order.hpp"

#include "compare/uncertainty/parallel.hpp"

#include <algorithm>

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
        const double sign = better_[figure] == Better::lower ? 1.0 : -1.0;
        Counts& counts = counts_[figure];
        std::vector<unsigned>& ahead = scratch_[worker]; // by route and draw: routes that are better
        ahead.assign(routes_ * batch.draws, 0);
        for (std::size_t i = 0; i < routes_; ++i) {
            const double* ours = batch.column(i * better_.size() + figure).data();
            for (std::size_t j = 0; j < routes_; ++j) {
                const double* theirs = batch.column(j * better_.size() + figure).data();
                unsigned* ranks = ahead.data() + j * batch.draws;
                unsigned won = 0;
                for (std::size_t d = 0; d < batch.draws; ++d) {
                    const unsigned beats = sign * ours[d] < sign * theirs[d] ? 1U : 0U;
                    won += beats;
                    ranks[d] += beats;
                }
                counts.beats[i * routes_ + j] += won;
            }
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
