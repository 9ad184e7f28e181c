// SPDX-License-Identifier: MIT
#include "base/percentages.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace routeweigh {

std::vector<std::int64_t> largest_remainder(std::span<const double> shares, std::int64_t units) {
    const double sum = std::accumulate(shares.begin(), shares.end(), 0.0);
    std::vector<std::int64_t> parts;
    std::vector<double> lost;
    std::int64_t missing = units;
    for (const double share : shares) {
        const double exact = share / sum * static_cast<double>(units);
        // What misses a whole part by the rounding of doubles only has it.
        const double whole = std::floor(exact + 1e-9);
        parts.push_back(static_cast<std::int64_t>(whole));
        lost.push_back(exact - whole);
        missing -= parts.back();
    }
    std::vector<std::size_t> order(shares.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return lost[a] > lost[b]; });
    for (std::size_t i = 0; missing > 0 && i < order.size(); ++i, --missing)
        ++parts[order[i]];
    return parts;
}

} // namespace routeweigh
