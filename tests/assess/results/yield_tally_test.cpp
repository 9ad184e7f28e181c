// SPDX-License-Identifier: MIT
#include "assess/results/yield_tally.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace routeweigh::results;

namespace {

YieldTally tally_of(const std::vector<std::vector<double>>& sections) {
    YieldTally tally;
    for (std::size_t section = 0; section < sections.size(); ++section) {
        tally.add_section();
        for (const double yield : sections[section])
            tally.add(yield, section);
    }
    return tally;
}

} // namespace

TEST_CASE("quartiles interpolate between neighbours: the worked list 1 2 4 8 16") {
    // Type 7: place (n - 1) p, so the quartiles of five values are the second and the fourth.
    const YieldTally tally = tally_of({{16, 1, 8, 2, 4}});
    const Spread spread = tally.spread(tally.levels());
    CHECK(spread.quartile1 == 2);
    CHECK(spread.median == 4);
    CHECK(spread.quartile3 == 8);
    CHECK(spread.least == 1);
    CHECK(spread.most == 16);
    CHECK(spread.mean == doctest::Approx(6.2));
    CHECK(spread.deviation == doctest::Approx(std::sqrt(37.2))); // squares 341 less 5 x 6.2^2, over 4
    const YieldTally four = tally_of({{1, 2, 3, 4}});
    CHECK(quantile(four.levels(), 0.25) == doctest::Approx(1.75));
    CHECK(quantile(four.levels(), 0.5) == doctest::Approx(2.5));
}

TEST_CASE("one yield is its own quartiles and has no deviation") {
    const YieldTally tally = tally_of({{80}});
    const Spread spread = tally.spread(tally.levels());
    CHECK(spread.quartile1 == 80);
    CHECK(spread.quartile3 == 80);
    CHECK(std::isnan(spread.deviation));
    CHECK(std::isnan(tally_of({{}}).spread(tally_of({{}}).levels()).median));
}

TEST_CASE("sections are compared by ranks: a worked table without and with ties") {
    // Ranks 1 2 3 and 4 5 6: rank sums 6 and 15, H = 12/42 (36/3 + 225/3) - 21 = 27/7.
    const auto apart = compare_sections(tally_of({{1, 2, 3}, {4, 5, 6}}).levels());
    REQUIRE(apart);
    CHECK(apart->h == doctest::Approx(27.0 / 7));
    CHECK(apart->degrees == 1);
    CHECK(apart->small);
    // One degree of freedom: p is the two-sided tail of the normal distribution at sqrt(H).
    CHECK(apart->p == doctest::Approx(std::erfc(std::sqrt(27.0 / 7 / 2))));
    // 1 2 2 against 2 3: ranks 1 3 3 and 3 5; H = 12/30 (49/3 + 64/2) - 18 = 4/3, over 1 - 24/120.
    const auto tied = compare_sections(tally_of({{1, 2, 2}, {2, 3}}).levels());
    REQUIRE(tied);
    CHECK(tied->h == doctest::Approx(4.0 / 3 / 0.8));
    CHECK_FALSE(compare_sections(tally_of({{1, 2, 3}}).levels()).has_value());
    CHECK_FALSE(compare_sections(tally_of({{2, 2}, {2, 2}}).levels()).has_value());
}

TEST_CASE("a yield far from the median stands out by the modified z-score") {
    // Median 80, distances 2 1 0 1 40: their median is 1, so 0.6745 x 40 stands out and 0.6745 x 2 does not.
    const auto test = find_outliers(tally_of({{78, 79, 80, 81, 40}}).levels());
    REQUIRE(test);
    CHECK(test->median == 79);
    CHECK(test->deviation == 1);
    CHECK(test->outliers == 1);
    CHECK(test->stands_out(40));
    CHECK_FALSE(test->stands_out(81));
    CHECK_FALSE(find_outliers(tally_of({{78, 79, 80, 81}}).levels()).has_value());
    CHECK_FALSE(find_outliers(tally_of({{80, 80, 80, 80, 40}}).levels()).has_value());
}

TEST_CASE("counted in steps, order statistics stay within half a step, and the moments stay as they are") {
    YieldTally counted, kept;
    counted.add_section();
    kept.add_section();
    // The same set of yields, once and ten times over.
    const std::size_t count = YieldTally::most_kept / 8;
    for (std::size_t i = 0; i < count; ++i) {
        const double yield = 60 + 40 * std::fmod(static_cast<double>(i) * 0.6180339887498949, 1.0);
        kept.add(yield, 0);
        for (int again = 0; again < 10; ++again)
            counted.add(yield, 0);
    }
    REQUIRE(counted.counted_in_steps());
    REQUIRE_FALSE(kept.counted_in_steps());
    const Spread steps = counted.spread(counted.levels());
    const Spread exact = kept.spread(kept.levels());
    CHECK(steps.count == 10 * exact.count);
    CHECK(steps.mean == doctest::Approx(exact.mean).epsilon(1e-12));
    CHECK(steps.least == exact.least);
    const double gap = 40.0 / static_cast<double>(count); // between neighbours, at most a few of it
    CHECK(std::abs(steps.median - exact.median) < YieldTally::step / 2 + 3 * gap);
    CHECK(std::abs(steps.quartile1 - exact.quartile1) < YieldTally::step / 2 + 3 * gap);
    CHECK(std::abs(steps.quartile3 - exact.quartile3) < YieldTally::step / 2 + 3 * gap);
}

TEST_CASE("what lies beyond the scale counts at its end") {
    YieldTally tally;
    tally.add_section();
    for (std::size_t i = 0; i <= YieldTally::most_kept; ++i)
        tally.add(1e9, 0);
    CHECK(tally.levels().yields == std::vector<double>{YieldTally::highest});
}
