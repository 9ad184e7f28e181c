// SPDX-License-Identifier: MIT
#include "route/scale.hpp"

#include "base/index.hpp"
#include "route/reaction_graph.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace routeweigh {

ScalePlan::ScalePlan(int step_count, int final_step, std::vector<Feed> feeds)
    : step_count_(step_count), final_step_(final_step), feeds_(std::move(feeds)),
      feeds_from_(at(step_count)) {
    std::vector<std::pair<int, int>> edges;
    for (std::size_t i = 0; i < feeds_.size(); ++i) {
        feeds_from_[at(feeds_[i].from)].push_back(static_cast<int>(i));
        edges.emplace_back(feeds_[i].from, feeds_[i].to);
    }
    groups_ = components_last_first(step_count, edges);
    for (const std::vector<int>& group : groups_) {
        const std::vector<int>& leaving = feeds_from_[at(group.front())];
        const bool feeds_itself = std::any_of(leaving.begin(), leaving.end(),
                                              [&](int feed) { return feeds_[at(feed)].to == group.front(); });
        loops_.push_back(group.size() > 1 || feeds_itself);
    }
}

bool ScalePlan::has_loop() const {
    return std::any_of(loops_.begin(), loops_.end(), [](bool loop) { return loop; });
}

template<Number N>
bool ScalePlan::solve(std::span<const N> ratios, std::span<N> runs, bool& alike) const {
    std::fill(runs.begin(), runs.end(), N(0.0));
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        const std::vector<int>& group = groups_[g];
        if (loops_[g]) {
            if constexpr (std::same_as<N, double>) {
                if (!solve_loop(group, ratios, runs)) return false;
            } else {
                alike = false;
            }
            continue;
        }
        const int step = group.front();
        N needed = step == final_step_ ? 1.0 : 0.0;
        for (const int feed : feeds_from_[at(step)])
            needed += ratios[at(feed)] * runs[at(feeds_[at(feed)].to)];
        runs[at(step)] = needed;
    }
    return true;
}

template bool ScalePlan::solve(std::span<const double>, std::span<double>, bool&) const;
template bool ScalePlan::solve(std::span<const Lanes>, std::span<Lanes>, bool&) const;

bool ScalePlan::solve_loop(const std::vector<int>& group, std::span<const double> ratios,
                           std::span<double> runs) const {
    // (I - R) x = demand from outside the loop, by Gaussian elimination with row pivoting.
    const std::size_t size = group.size();
    std::vector<std::vector<double>> rows(size, std::vector<double>(size + 1, 0.0));
    for (std::size_t row = 0; row < size; ++row) {
        rows[row][row] += 1.0;
        rows[row][size] = group[row] == final_step_ ? 1.0 : 0.0;
        for (const int feed : feeds_from_[at(group[row])]) {
            const int to = feeds_[at(feed)].to;
            const auto inside = std::find(group.begin(), group.end(), to);
            if (inside == group.end())
                rows[row][size] += ratios[at(feed)] * runs[at(to)];
            else
                rows[row][static_cast<std::size_t>(inside - group.begin())] -= ratios[at(feed)];
        }
    }
    for (std::size_t k = 0; k < size; ++k) {
        const auto pivot =
            std::max_element(rows.begin() + static_cast<std::ptrdiff_t>(k), rows.end(),
                             [k](const auto& a, const auto& b) { return std::abs(a[k]) < std::abs(b[k]); });
        std::swap(rows[k], *pivot);
        if (std::abs(rows[k][k]) < 1e-12) return false;
        for (std::size_t row = 0; row < size; ++row) {
            if (row == k) continue;
            const double factor = rows[row][k] / rows[k][k];
            for (std::size_t column = k; column <= size; ++column)
                rows[row][column] -= factor * rows[k][column];
        }
    }
    for (std::size_t row = 0; row < size; ++row) {
        const double value = rows[row][size] / rows[row][row];
        if (!(value >= 0.0)) return false; // negative runs: the loop eats more than it makes
        runs[at(group[row])] = value;
    }
    return true;
}

std::vector<int> ScalePlan::longest_sequence(std::span<const double> yields) const {
    // Groups come last-first, so the longest way from a step down to the last one is known when the step is
    // reached.
    std::vector<int> length(at(step_count_), 0), next(at(step_count_), -1);
    std::vector<double> product(at(step_count_), 1.0);
    int first = final_step_;
    for (const std::vector<int>& group : groups_)
        for (const int step : group) {
            if (step == final_step_) {
                length[at(step)] = 1;
                product[at(step)] = yields[at(step)];
                continue;
            }
            for (const int feed : feeds_from_[at(step)]) {
                const int to = feeds_[at(feed)].to;
                if (length[at(to)] == 0 || to == step) continue;
                const double through = product[at(to)] * yields[at(step)];
                const int longer = length[at(to)] + 1;
                if (longer > length[at(step)] ||
                    (longer == length[at(step)] && through < product[at(step)])) {
                    length[at(step)] = longer;
                    product[at(step)] = through;
                    next[at(step)] = to;
                }
            }
            if (length[at(step)] > length[at(first)] ||
                (length[at(step)] == length[at(first)] && product[at(step)] < product[at(first)]))
                first = step;
        }
    std::vector<int> sequence;
    for (int step = first; step >= 0 && static_cast<int>(sequence.size()) <= step_count_;
         step = next[at(step)])
        sequence.push_back(step);
    return sequence;
}

} // namespace routeweigh
