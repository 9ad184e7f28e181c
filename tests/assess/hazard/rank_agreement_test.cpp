// SPDX-License-Identifier: MIT
#include "assess/hazard/rank_agreement.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <vector>

using doctest::Approx;
using routeweigh::kendall_tau_b;

// Reference values: scipy.stats.kendalltau of SciPy 1.10.1 (Debian 12), variant b.
TEST_CASE("Kendall's tau-b agrees with SciPy, ties included") {
    const std::vector<double> first{1.76, 2.03, 1.91, 2.4, 0.8, 1.91, 1.2};
    const std::vector<double> second{1.83, 1.95, 2.10, 2.4, 0.9, 1.88, 0.9};
    CHECK(*kendall_tau_b(first, second) == Approx(0.8499999999999999).epsilon(1e-12));
    const std::vector<double> tied{1, 2, 2, 3, 4}, other{1, 3, 2, 2, 4};
    CHECK(*kendall_tau_b(tied, other) == Approx(0.6666666666666666).epsilon(1e-12));
    const std::vector<double> up{1, 2, 3, 4}, down{4, 3, 2, 1};
    CHECK(*kendall_tau_b(up, up) == Approx(1));
    CHECK(*kendall_tau_b(up, down) == Approx(-1));
}

TEST_CASE("a list without two different values has no order to agree with") {
    const std::vector<double> flat{1, 1, 1}, any{1, 2, 3}, one{5};
    CHECK(!kendall_tau_b(flat, any));
    CHECK(!kendall_tau_b(any, flat));
    CHECK(!kendall_tau_b(one, one));
}

TEST_CASE("sorting counts the pairs that comparing all of them counts, ties among them") {
    std::mt19937 draw(8);
    for (int round = 0; round < 300; ++round) {
        const int values = std::uniform_int_distribution<int>(1, 12)(draw); // few values: many ties
        std::uniform_int_distribution<int> value(0, values);
        std::vector<double> a(std::uniform_int_distribution<std::size_t>(2, 40)(draw)), b(a.size());
        for (std::size_t i = 0; i < a.size(); ++i) {
            a[i] = value(draw);
            b[i] = value(draw);
        }
        double agreement = 0, untied_a = 0, untied_b = 0;
        const auto sign = [](double x, double y) { return x < y ? -1.0 : x > y ? 1.0 : 0.0; };
        for (std::size_t i = 0; i < a.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) {
                agreement += sign(a[i], a[j]) * sign(b[i], b[j]);
                untied_a += std::abs(sign(a[i], a[j]));
                untied_b += std::abs(sign(b[i], b[j]));
            }
        const auto tau = kendall_tau_b(a, b);
        REQUIRE(tau.has_value() == (untied_a > 0 && untied_b > 0));
        if (tau) REQUIRE(*tau == doctest::Approx(agreement / std::sqrt(untied_a * untied_b)));
    }
}
