// SPDX-License-Identifier: MIT
#include "base/lanes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

using namespace routeweigh;

namespace {

/// Numbers as an evaluation meets them, and those at which arithmetic has its corners.
Lanes random_lanes(std::mt19937& draw) {
    constexpr double infinite = std::numeric_limits<double>::infinity();
    constexpr std::array corners{0.0,      -0.0,      1.0,
                                 infinite, -infinite, std::numeric_limits<double>::quiet_NaN()};
    std::normal_distribution<double> ordinary(0.0, 10.0);
    std::uniform_int_distribution<std::size_t> corner(0, 3 * corners.size());
    Lanes result = 0.0;
    for (std::size_t lane = 0; lane < lane_count; ++lane)
        if (const std::size_t which = corner(draw); which < corners.size())
            result.set(lane, corners[which]);
        else
            result.set(lane, ordinary(draw));
    return result;
}

bool same_bits(double a, double b) {
    return (std::isnan(a) && std::isnan(b)) ||
           std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

/// f of lanes is f of each lane.
template<class Function>
void check_each(Function f) {
    std::mt19937 draw(3);
    for (int round = 0; round < 1000; ++round) {
        const Lanes a = random_lanes(draw), b = random_lanes(draw), together = f(a, b);
        for (std::size_t lane = 0; lane < lane_count; ++lane) {
            CAPTURE(a[lane]);
            CAPTURE(b[lane]);
            const double alone = f(a[lane], b[lane]);
            REQUIRE(same_bits(together[lane], alone));
        }
    }
}

} // namespace

TEST_CASE("arithmetic of lanes gives the bits of doubles") {
    check_each([](const auto& a, const auto& b) { return a + b; });
    check_each([](const auto& a, const auto& b) { return a - b; });
    check_each([](const auto& a, const auto& b) { return a * b; });
    check_each([](const auto& a, const auto& b) { return a / b; });
    check_each([](const auto& a, const auto& b) { return -a * b; });
    check_each([](const auto& a, const auto&) { return 1.0 + 0.5 * a; });
    check_each([](const auto& a, const auto& b) { return choose(a < b, a, b); });
    check_each([](const auto& a, const auto& b) { return choose(a <= b, a, b); });
    check_each([](const auto& a, const auto& b) { return choose(a > b, a, b); });
    check_each([](const auto& a, const auto& b) { return choose(a >= b, a, b); });
    check_each([](const auto& a, const auto& b) { return choose(a == b, a, b); });
    check_each([](const auto& a, const auto&) { return each(a, [](double x) { return std::cbrt(x); }); });
}

TEST_CASE("the lesser, the greater and the absolute value are those of the standard library") {
    std::mt19937 draw(4);
    for (int round = 0; round < 1000; ++round) {
        const Lanes a = random_lanes(draw), b = random_lanes(draw);
        const Lanes least = lesser(a, b), most = greater(a, b), plain = absolute(a);
        for (std::size_t lane = 0; lane < lane_count; ++lane) {
            REQUIRE(same_bits(least[lane], std::min(a[lane], b[lane])));
            REQUIRE(same_bits(most[lane], std::max(a[lane], b[lane])));
            // Zero has a sign that no figure knows.
            REQUIRE((plain[lane] == std::abs(a[lane]) || std::isnan(a[lane])));
        }
    }
}

TEST_CASE("lanes agree only when all give one answer") {
    Lanes a = 1.0;
    bool alike = true;
    CHECK(agree(a > Lanes(0.0), alike));
    CHECK(alike);
    CHECK(!agree(a > Lanes(2.0), alike));
    CHECK(alike);
    a.set(5, 3.0);
    CHECK(!(a > Lanes(2.0)).none());
    CHECK(!(a > Lanes(2.0)).all());
    agree(a > Lanes(2.0), alike);
    CHECK(!alike);
    agree(a > Lanes(0.0), alike);
    CHECK(!alike); // once apart, apart
}
