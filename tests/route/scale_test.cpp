// SPDX-License-Identifier: MIT
#include "route/scale.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <random>
#include <vector>

using namespace routeweigh;
using doctest::Approx;

namespace {

std::vector<double> runs(const ScalePlan& plan, int steps, std::vector<double> ratios) {
    std::vector<double> result(static_cast<std::size_t>(steps), -1.0);
    REQUIRE(plan.solve(ratios, result));
    return result;
}

} // namespace

TEST_CASE("one step runs once") {
    CHECK(runs(ScalePlan(1, 0, {}), 1, {}) == std::vector<double>{1});
}

TEST_CASE("along a line the runs multiply") {
    // Step 2 is the last; it needs 2 runs of step 1, and each of those half a run of step 0.
    const ScalePlan plan(3, 2, {{0, 1}, {1, 2}});
    CHECK(runs(plan, 3, {0.5, 2.0}) == std::vector<double>{1, 2, 1});
    CHECK(plan.longest_sequence(std::vector<double>{0.9, 0.9, 0.9}) == std::vector<int>{0, 1, 2});
    CHECK_FALSE(plan.has_loop());
}

TEST_CASE("the steps may be listed in any order") {
    const ScalePlan plan(3, 0, {{1, 0}, {2, 1}});
    CHECK(runs(plan, 3, {2.0, 0.5}) == std::vector<double>{1, 2, 1});
    CHECK(plan.longest_sequence(std::vector<double>{0.9, 0.9, 0.9}) == std::vector<int>{2, 1, 0});
}

TEST_CASE("a step that feeds two adds up what both need") {
    // 0 feeds 1 and 2, both feed 3: runs of 0 = 0.5 x 2 + 0.25 x 4
    const ScalePlan plan(4, 3, {{0, 1}, {0, 2}, {1, 3}, {2, 3}});
    CHECK(runs(plan, 4, {0.5, 0.25, 2.0, 4.0}) == std::vector<double>{2, 2, 4, 1});
}

TEST_CASE("where two branches meet, the longest counts for the yield, and of equal ones the poorer") {
    // 0 -> 1 -> 3 and 2 -> 3
    const ScalePlan uneven(4, 3, {{0, 1}, {1, 3}, {2, 3}});
    CHECK(uneven.longest_sequence(std::vector<double>{0.9, 0.9, 0.1, 0.9}) == std::vector<int>{0, 1, 3});
    const ScalePlan even(5, 4, {{0, 1}, {1, 4}, {2, 3}, {3, 4}});
    CHECK(even.longest_sequence(std::vector<double>{0.9, 0.9, 0.8, 0.9, 0.5}) == std::vector<int>{2, 3, 4});
    CHECK(even.longest_sequence(std::vector<double>{0.7, 0.9, 0.8, 0.9, 0.5}) == std::vector<int>{0, 1, 4});
}

TEST_CASE("a later step that feeds an earlier one is solved as a system") {
    // 1 gives the product; each run of it takes 2 runs of 0, and each run of 0 a fifth of a run of 1:
    // x0 = 2 x1, x1 = 1 + 0.2 x0, hence x1 = 1/0.6
    const ScalePlan plan(2, 1, {{0, 1}, {1, 0}});
    const std::vector<double> x = runs(plan, 2, {2.0, 0.2});
    CHECK(x[1] == Approx(1 / 0.6));
    CHECK(x[0] == Approx(2 / 0.6));
    CHECK(plan.has_loop());
}

TEST_CASE("a step that uses some of its own product") {
    const ScalePlan plan(1, 0, {{0, 0}});
    CHECK(runs(plan, 1, {0.25})[0] == Approx(1 / 0.75));
    CHECK(plan.has_loop());
}

TEST_CASE("a loop that uses up as much as it makes has no solution") {
    const ScalePlan plan(2, 1, {{0, 1}, {1, 0}});
    std::vector<double> x(2);
    CHECK_FALSE(plan.solve(std::vector<double>{2.0, 0.5}, x));
    CHECK_FALSE(plan.solve(std::vector<double>{2.0, 0.7}, x));
    CHECK(plan.solve(std::vector<double>{2.0, 0.49}, x));
}

TEST_CASE("a loop of three beside steps outside it") {
    // 0 feeds 1, 1 feeds 2, 2 feeds 0 and the last step 3; 4 feeds 0
    const ScalePlan plan(5, 3, {{0, 1}, {1, 2}, {2, 0}, {2, 3}, {4, 0}});
    const std::vector<double> x = runs(plan, 5, {1.0, 1.0, 0.5, 3.0, 2.0});
    CHECK(x[3] == Approx(1));
    CHECK(x[2] == Approx(6)); // x2 = 3 + 0.5 x0, x1 = x2, x0 = x1
    CHECK(x[1] == Approx(6));
    CHECK(x[0] == Approx(6));
    CHECK(x[4] == Approx(12));
}

TEST_CASE("random plans: what is made is what is asked for") {
    std::mt19937 draw(31);
    std::uniform_int_distribution<int> count(1, 8);
    std::uniform_real_distribution<double> ratio(0.01, 1.5);
    std::bernoulli_distribution forward(0.4), backward(0.1);
    int loops = 0, refused = 0;
    for (int round = 0; round < 5000; ++round) {
        CAPTURE(round);
        const int steps = count(draw);
        std::vector<ScalePlan::Feed> feeds;
        for (int a = 0; a < steps; ++a)
            for (int b = 0; b < steps; ++b)
                if (a < b ? forward(draw) : backward(draw)) feeds.push_back({a, b});
        std::vector<double> ratios;
        for (const ScalePlan::Feed& feed : feeds)
            ratios.push_back(feed.from < feed.to ? ratio(draw) : 0.4 * ratio(draw));
        const ScalePlan plan(steps, steps - 1, feeds);
        std::vector<double> x(static_cast<std::size_t>(steps));
        if (plan.has_loop()) ++loops;
        if (!plan.solve(ratios, x)) {
            ++refused;
            REQUIRE(plan.has_loop());
            continue;
        }
        for (int s = 0; s < steps; ++s) {
            double asked = s == steps - 1 ? 1.0 : 0.0;
            for (std::size_t f = 0; f < feeds.size(); ++f)
                if (feeds[f].from == s) asked += ratios[f] * x[static_cast<std::size_t>(feeds[f].to)];
            REQUIRE(x[static_cast<std::size_t>(s)] >= 0.0);
            REQUIRE(std::abs(x[static_cast<std::size_t>(s)] - asked) <= 1e-9 * (1.0 + asked));
        }
    }
    CHECK(loops > 500);
    CHECK(refused > 10);
    CHECK(refused < 2500);
}
