// SPDX-License-Identifier: MIT
// The counter-based generator against its published vectors, and the distributions against their moments.
#include "base/distribution.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <tuple>
#include <vector>

using namespace routeweigh;
using doctest::Approx;

TEST_CASE("Philox4x32-10 gives the published vectors") {
    // kat_vectors of Random123 (Salmon et al. 2011), three lines "philox4x32 10"; remembered.
    CHECK(philox({0, 0, 0, 0}, {0, 0}) == PhiloxBlock{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8});
    CHECK(philox({0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff}, {0xffffffff, 0xffffffff}) ==
          PhiloxBlock{0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd});
    CHECK(philox({0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0}) ==
          PhiloxBlock{0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1});
}

TEST_CASE("a stream is the blocks of its counter, one after the other") {
    const std::uint64_t seed = 0x0123456789abcdef, run = 0xfedcba9876543210;
    PhiloxStream stream(seed, 7, run);
    for (std::uint32_t place = 0; place < 200; ++place) {
        const PhiloxBlock block = philox({place, 7, 0x76543210, 0xfedcba98}, {0x89abcdef, 0x01234567});
        REQUIRE(stream() == (block[0] | std::uint64_t{block[1]} << 32));
        REQUIRE(stream() == (block[2] | std::uint64_t{block[3]} << 32));
    }
}

TEST_CASE("another seed, quantity or run gives other numbers") {
    std::vector<std::uint64_t> first;
    for (const auto& [seed, quantity, run] :
         std::vector<std::tuple<std::uint64_t, std::uint32_t, std::uint64_t>>{{1, 0, 0},
                                                                              {2, 0, 0},
                                                                              {1, 1, 0},
                                                                              {1, 0, 1},
                                                                              {1, 0, std::uint64_t{1} << 32},
                                                                              {std::uint64_t{1} << 32, 0, 0}})
        first.push_back(PhiloxStream(seed, quantity, run)());
    std::sort(first.begin(), first.end());
    CHECK(std::adjacent_find(first.begin(), first.end()) == first.end());
}

TEST_CASE("draws have the mean and the deviation that a distribution states, and stay within its ends") {
    const std::vector<Distribution> all{Normal{3, 0.5},          Rectangular{-1, 2}, Triangular{0, 1, 4},
                                        Triangular{0, 0, 1},     Pert{2, 3, 10},     Pert{0, 1, 1},
                                        Empirical{{1, 1, 2, 8}}, Rectangular{5, 5},  Normal{2, 0},
                                        Triangular{3, 3, 3},     Pert{4, 4, 4}};
    constexpr std::size_t count = 200000;
    std::vector<double> values(count);
    std::uint32_t number = 0;
    for (const Distribution& distribution : all) {
        CAPTURE(distribution.name());
        CAPTURE(number);
        PhiloxStream stream(2026, number++, 0);
        distribution.draw(stream, values);
        double mean = 0, square = 0;
        for (const double value : values)
            mean += value / count;
        for (const double value : values)
            square += (value - mean) * (value - mean) / count;
        // Five standard errors; of a deviation it is at most about 1.5 deviations over the root of 2 n here.
        const double error = 5 * distribution.deviation() / std::sqrt(double(count));
        CHECK(std::abs(mean - distribution.mean()) <= error + 1e-9);
        CHECK(std::abs(std::sqrt(square) - distribution.deviation()) <= 1.1 * error + 1e-9);
        CHECK(*std::min_element(values.begin(), values.end()) >= distribution.least());
        CHECK(*std::max_element(values.begin(), values.end()) <= distribution.greatest());
    }
}

TEST_CASE("means and deviations are those of the formulas") {
    CHECK(Distribution(Rectangular{0, 1}).deviation() == Approx(1 / std::sqrt(12.0))); // JCGM 100:2008, 4.3.7
    CHECK(Distribution(Triangular{-1, 0, 1}).deviation() ==
          Approx(1 / std::sqrt(6.0))); // JCGM 100:2008, 4.3.9
    CHECK(Distribution(Pert{0, 3, 6}).mean() == Approx(3));
    CHECK(Distribution(Pert{0, 3, 6}).deviation() ==
          Approx(3 / std::sqrt(7.0))); // beta(3, 3) over 6: var 1/28
    CHECK(Distribution(Empirical{{2, 4}}).deviation() == Approx(1));
    CHECK(std::isinf(Distribution(Normal{0, 1}).greatest()));
}

TEST_CASE("a distribution that cannot be is refused with the reason") {
    const auto nan = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_WITH_AS(Distribution(Normal{0, -1}), "a standard deviation is not negative",
                         std::domain_error);
    CHECK_THROWS_AS(Distribution(Normal{nan, 1}), std::domain_error);
    CHECK_THROWS_WITH_AS(Distribution(Rectangular{2, 1}),
                         "the lower end of a distribution lies above its upper end", std::domain_error);
    CHECK_THROWS_WITH_AS(Distribution(Triangular{0, 2, 1}),
                         "the most likely value of a distribution lies outside its ends", std::domain_error);
    CHECK_THROWS_AS(Distribution(Pert{0, 2, 1}), std::domain_error);
    CHECK_THROWS_WITH_AS(Distribution(Empirical{}), "there are no results to draw from", std::domain_error);
    CHECK_THROWS_AS(Distribution(Empirical{{1, nan}}), std::domain_error);
}
