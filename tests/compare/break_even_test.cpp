// SPDX-License-Identifier: MIT
#include "compare/break_even.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <vector>

using namespace routeweigh;

namespace {

constexpr double pi = 3.14159265358979;

void check_roots(const BreakEvenSearch& search, std::vector<double> expected) {
    REQUIRE(search.roots.size() == expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i)
        CHECK(search.roots[i] == doctest::Approx(expected[i]).epsilon(1e-9));
}

} // namespace

TEST_CASE("one over the input meets a target where algebra says") {
    // 40 x 0.8 / y = 50 at y = 0.64.
    const BreakEvenSearch search = find_break_even(
        [](double yield) { return yield > 0.0 ? 32.0 / yield : std::nan(""); }, 50.0, 0.0, 1.0);
    check_roots(search, {0.64});
    CHECK_FALSE(search.constant);
    CHECK_FALSE(search.high_cut);
}

TEST_CASE("every root of a polynomial is found, also two between neighbouring points") {
    const auto cubic = [](double x) { return (x - 1.0) * (x - 2.0) * (x - 7.5); };
    check_roots(find_break_even(cubic, 0.0, 0.0, 10.0), {1.0, 2.0, 7.5});
    // Two roots 0.02 apart on a grid of 10/64.
    const auto close = [](double x) { return 5.0 + (x - 3.0) * (x - 3.02); };
    check_roots(find_break_even(close, 5.0, 0.0, 10.0), {3.0, 3.02});
    // One that touches and does not cross, within the square root of what a double can tell.
    const BreakEvenSearch touch =
        find_break_even([](double x) { return 1.0 + (x - 4.1) * (x - 4.1); }, 1.0, 0.0, 10.0);
    REQUIRE(touch.roots.size() == 1);
    CHECK(touch.roots.front() == doctest::Approx(4.1).epsilon(1e-5));
}

TEST_CASE("random polynomials with known roots give them back") {
    std::mt19937 draw(20261126);
    std::uniform_real_distribution<double> place(0.5, 9.5);
    for (int round = 0; round < 200; ++round) {
        std::array<double, 3> roots{place(draw), place(draw), place(draw)};
        std::sort(roots.begin(), roots.end());
        if (roots[1] - roots[0] < 0.01 || roots[2] - roots[1] < 0.01) continue;
        const BreakEvenSearch search = find_break_even(
            [&](double x) { return 3.0 + (x - roots[0]) * (x - roots[1]) * (x - roots[2]); }, 3.0, 0.0, 10.0);
        CAPTURE(roots[0]);
        CAPTURE(roots[1]);
        CAPTURE(roots[2]);
        check_roots(search, {roots.begin(), roots.end()});
    }
}

TEST_CASE("a kink at the target, as where another reagent becomes limiting, is a root") {
    const auto kinked = [](double x) { return x < 2.0 ? 4.0 - x : 2.0; };
    const BreakEvenSearch search = find_break_even(kinked, 3.0, 0.0, 5.0);
    check_roots(search, {1.0});
}

TEST_CASE("a leap over the target is no root and is reported") {
    const BreakEvenSearch search =
        find_break_even([](double x) { return x < pi ? 1.0 : 2.0 + x; }, 3.0, 0.0, 10.0);
    CHECK(search.roots.empty());
    REQUIRE(search.jumps.size() == 1);
    CHECK(search.jumps.front() == doctest::Approx(pi));
}

TEST_CASE("what does not depend on the input is said to, equal or not") {
    const auto same = [](double) { return 72.6; };
    CHECK(find_break_even(same, 72.6, 0.0, 1.0).everywhere);
    const BreakEvenSearch other = find_break_even(same, 70.0, 0.0, 1.0);
    CHECK(other.constant);
    CHECK_FALSE(other.everywhere);
    CHECK(other.roots.empty());
}

TEST_CASE("where the figure has no value is closed in on from both sides") {
    const auto part = [](double x) { return x < 2.25 || x > 7.125 ? std::nan("") : x * x; };
    const BreakEvenSearch search = find_break_even(part, 2.25 * 2.25 + 1e-3, 0.0, 10.0);
    CHECK(search.low_cut);
    CHECK(search.high_cut);
    CHECK(search.low == doctest::Approx(2.25));
    CHECK(search.high == doctest::Approx(7.125));
    check_roots(search, {std::sqrt(2.25 * 2.25 + 1e-3)});
}

TEST_CASE("a figure without any value gives an empty search") {
    const BreakEvenSearch search = find_break_even([](double) { return std::nan(""); }, 1.0, 0.0, 1.0);
    CHECK(search.curve.empty());
    CHECK(search.low > search.high);
}

TEST_CASE("the value as written is looked at, so that a figure equal to itself is found") {
    const std::array written{0.80};
    const BreakEvenSearch search = find_break_even([](double x) { return x > 0.0 ? 1.0 / x : std::nan(""); },
                                                   1.0 / 0.80, 0.0, 1.0, written);
    REQUIRE(search.roots.size() == 1);
    CHECK(search.roots.front() == 0.80);
}
