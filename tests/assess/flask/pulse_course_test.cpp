// SPDX-License-Identifier: MIT
// Two first-order reactions in a row, A -> B -> gone, by the closed solution of textbooks on kinetics:
// B = A0 k1 / (k2 - k1) (exp(-k1 t) - exp(-k2 t)), greatest at ln(k1/k2) / (k1 - k2).
// tests/oracles/check_course.py asks SciPy's integrator the same.
#include "assess/flask/pulse_course.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace routeweigh;

namespace {

double pulse(double made, double used, double t) {
    return present({{0, 0, 1, used}}, made, t);
}

} // namespace

TEST_CASE("one portion follows the textbook's solution") {
    for (const auto& [k1, k2] : {std::pair{0.1, 0.02}, {0.02, 0.1}, {3.0, 0.001}})
        for (const double t : {0.0, 0.5, 7.0, 30.0, 200.0}) {
            const double expected = k1 / (k2 - k1) * (std::exp(-k1 * t) - std::exp(-k2 * t));
            CHECK(pulse(k1, k2, t) == doctest::Approx(expected).epsilon(1e-10));
        }
    const double k1 = 0.1, k2 = 0.02, greatest = std::log(k1 / k2) / (k1 - k2);
    CHECK(pulse(k1, k2, greatest) > pulse(k1, k2, greatest * 0.99));
    CHECK(pulse(k1, k2, greatest) > pulse(k1, k2, greatest * 1.01));
}

TEST_CASE("equal constants give k t exp(-k t), and close ones nearly the same") {
    CHECK(pulse(0.05, 0.05, 20) == doctest::Approx(std::exp(-1.0)));
    CHECK(pulse(0.05, 0.05 * (1 + 1e-9), 20) == doctest::Approx(std::exp(-1.0)).epsilon(1e-8));
}

TEST_CASE("what is made at once only decays, and what nothing uses stays") {
    CHECK(pulse(at_once, 0.1, 10) == doctest::Approx(std::exp(-1.0)));
    CHECK(pulse(at_once, 0, 1e6) == 1);
    CHECK(pulse(0.1, 0, 10) == doctest::Approx(1 - std::exp(-1.0)));
    CHECK(pulse(0.1, 0, 1e6) == doctest::Approx(1));
}

TEST_CASE("constants many powers of ten apart neither overflow nor turn negative") {
    for (const double k1 : {1e-9, 1e-3, 1.0, 1e6, 1e12})
        for (const double k2 : {1e-9, 1e-3, 1.0, 1e6, 1e12})
            for (const double t : {0.0, 1e-9, 1.0, 1e5}) {
                const double at_t = pulse(k1, k2, t), dripped = present({{0, 10, 1, k2}}, k1, t);
                CHECK(std::isfinite(at_t));
                CHECK(at_t >= 0);
                CHECK(at_t <= 1);
                CHECK(std::isfinite(dripped));
                CHECK(dripped >= -1e-12);
                CHECK(dripped <= 1 + 1e-12);
            }
}

TEST_CASE("many small portions come to what drips evenly") {
    for (const auto& [k1, k2] : {std::pair{at_once, 0.03}, {0.2, 0.03}, {0.03, 0.03}, {0.03, 0.2}}) {
        std::vector<FedPortion> portions;
        constexpr int count = 20000;
        for (int i = 0; i < count; ++i) {
            const double when = 100 * (i + 0.5) / count;
            portions.push_back({when, when, 1.0 / count, k2});
        }
        for (const double t : {20.0, 100.0, 150.0})
            CHECK(present({{0, 100, 1, k2}}, k1, t) ==
                  doctest::Approx(present(portions, k1, t)).epsilon(1e-4));
    }
}

TEST_CASE("a steady drip settles at rate over constant") {
    CHECK(present({{0, 1000, 1, 0.5}}, at_once, 900) == doctest::Approx(1e-3 / 0.5));
    CHECK(present({{0, 1000, 1, 0.5}}, 0.1, 900) == doctest::Approx(1e-3 / 0.5));
}

TEST_CASE("portions add up, and nothing is there before it goes in") {
    const FedPortion one{5, 5, 2, 0.1}, other{20, 30, 1, 0.3};
    CHECK(present({one, other}, 0.4, 4.9) == 0);
    for (const double t : {10.0, 25.0, 60.0})
        CHECK(present({one, other}, 0.4, t) ==
              doctest::Approx(present({one}, 0.4, t) + present({other}, 0.4, t)));
}

TEST_CASE("faster use never leaves more, on 2000 random portions") {
    std::mt19937 random(20261126);
    std::uniform_real_distribution<double> log_k(-4, 2), time(0, 600);
    for (int i = 0; i < 2000; ++i) {
        const double made = std::pow(10, log_k(random)), used = std::pow(10, log_k(random));
        const double from = time(random), until = from + time(random), t = time(random) * 2;
        CHECK(present({{from, until, 1, 2 * used}}, made, t) <=
              present({{from, until, 1, used}}, made, t) * (1 + 1e-6) + 1e-12);
    }
}
