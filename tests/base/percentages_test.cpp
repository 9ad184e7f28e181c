// SPDX-License-Identifier: MIT
#include "base/percentages.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdint>
#include <numeric>
#include <vector>

using namespace routeweigh;

TEST_CASE("what is missing after rounding down goes to those that lost most") {
    // 33.33 each: a third of 1000 loses a third, so the first takes the one that is missing.
    CHECK(largest_remainder(std::vector<double>{1, 1, 1}, 1000) == std::vector<std::int64_t>{334, 333, 333});
    CHECK(largest_remainder(std::vector<double>{0.4243, 0.5757}, 1000) ==
          std::vector<std::int64_t>{424, 576});
    CHECK(largest_remainder(std::vector<double>{0.0935, 0.9065}, 100) == std::vector<std::int64_t>{9, 91});
    CHECK(largest_remainder(std::vector<double>{3}, 1000) == std::vector<std::int64_t>{1000});
    CHECK(largest_remainder(std::vector<double>{1e-9, 5}, 1000) == std::vector<std::int64_t>{0, 1000});
    CHECK(largest_remainder(std::vector<double>{0, 5}, 1000) == std::vector<std::int64_t>{0, 1000});
}

TEST_CASE("rounded shares add up to the whole, and none is off by a part or more") {
    std::uint64_t state = 42;
    const auto next = [&] {
        state = state * 6364136223846793005ULL + 1442695040888963407ULL;
        return static_cast<double>(state >> 40U) / static_cast<double>(1U << 24U);
    };
    for (int round = 0; round < 2000; ++round) {
        std::vector<double> shares(1 + static_cast<std::size_t>(12 * next()));
        for (double& share : shares)
            share = std::pow(10.0, -6 * next());
        const double sum = std::accumulate(shares.begin(), shares.end(), 0.0);
        const auto parts = largest_remainder(shares, 1000);
        REQUIRE(std::accumulate(parts.begin(), parts.end(), std::int64_t{0}) == 1000);
        for (std::size_t i = 0; i < shares.size(); ++i)
            REQUIRE(std::abs(static_cast<double>(parts[i]) - 1000 * shares[i] / sum) < 1);
    }
}
