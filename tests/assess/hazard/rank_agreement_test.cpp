// SPDX-License-Identifier: MIT
#include "assess/hazard/rank_agreement.hpp"

#include <doctest/doctest.h>

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
