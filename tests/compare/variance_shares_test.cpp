// SPDX-License-Identifier: MIT
// Sensitivity indices against functions whose indices are known in closed form.
#include "compare/uncertainty/variance_shares.hpp"
#include "models.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <numbers>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

TEST_CASE("the function of Ishigami and Homma") {
    // sin x1 + a sin2 x2 + b x3^4 sin x1 on (-pi, pi)^3 (T. Ishigami, T. Homma, ISUMA 1990; remembered).
    constexpr double pi = std::numbers::pi, a = 7, b = 0.1;
    const double v1 = 0.5 * std::pow(1 + b * std::pow(pi, 4) / 5, 2), v2 = a * a / 8,
                 v13 = b * b * std::pow(pi, 8) * (1.0 / 18 - 1.0 / 50), v = v1 + v2 + v13;
    CHECK(v1 / v == Approx(0.3139).epsilon(0.001)); // as printed in many places: 0.3139, 0.4424, 0
    CHECK(v2 / v == Approx(0.4424).epsilon(0.001));
    const Rectangular range{-pi, pi};
    const Model model = one_output({range, range, range}, [](std::span<const double> x) {
        return std::sin(x[0]) + a * std::pow(std::sin(x[1]), 2) + b * std::pow(x[2], 4) * std::sin(x[0]);
    });
    VarianceSharesOptions options;
    options.draws = 200'000;
    options.threads = 2;
    const VarianceShares shares = variance_shares(model, options).front();
    CHECK(shares.variance == Approx(v).epsilon(0.01));
    CHECK(std::abs(shares.first[0] - v1 / v) < 0.01);
    CHECK(std::abs(shares.first[1] - v2 / v) < 0.01);
    CHECK(std::abs(shares.first[2]) < 0.01);
    CHECK(std::abs(shares.total[0] - (v1 + v13) / v) < 0.01);
    CHECK(std::abs(shares.total[1] - v2 / v) < 0.01);
    CHECK(std::abs(shares.total[2] - v13 / v) < 0.01);
}

TEST_CASE("the g function of Sobol'") {
    // product of (|4 x - 2| + a) / (1 + a) on (0, 1) (I. M. Sobol'; A. Saltelli, I. M. Sobol', Reliab. Eng.
    // Syst. Saf. 1995, 50, 225; remembered): V_i = 1 / (3 (1 + a_i)^2), V = product of (1 + V_i) less 1.
    constexpr std::array<double, 6> a{0, 0.5, 3, 9, 99, 99};
    const Model model = one_output(std::vector<Distribution>(a.size(), Rectangular{0, 1}), [=](auto x) {
        double product = 1.0;
        for (std::size_t i = 0; i < a.size(); ++i)
            product *= (std::abs(4 * x[i] - 2) + a[i]) / (1 + a[i]);
        return product;
    });
    double all = 1.0;
    for (const double each : a)
        all *= 1 + 1 / (3 * (1 + each) * (1 + each));
    VarianceSharesOptions options;
    options.draws = 400'000;
    options.threads = 2;
    const VarianceShares shares = variance_shares(model, options).front();
    CHECK(shares.variance == Approx(all - 1).epsilon(0.01));
    CHECK(1 / 3.0 / (all - 1) == Approx(0.5868).epsilon(0.001)); // as printed for the first input
    for (std::size_t i = 0; i < a.size(); ++i) {
        const double alone = 1 / (3 * (1 + a[i]) * (1 + a[i]));
        CHECK(std::abs(shares.first[i] - alone / (all - 1)) < 0.01);
        CHECK(std::abs(shares.total[i] - alone * all / (1 + alone) / (all - 1)) < 0.01);
    }
}

TEST_CASE("shares do not depend on the threads; what does not vary has none") {
    Model model = one_output({Normal{1, 0.1}, Normal{1, 0.2}}, [](auto x) { return x[0] * x[1]; });
    VarianceSharesOptions options;
    options.draws = 10'000;
    const VarianceShares one = variance_shares(model, options).front();
    options.threads = 3;
    const VarianceShares three = variance_shares(model, options).front();
    CHECK(one.first == three.first);
    CHECK(one.total == three.total);
    model = one_output({Normal{1, 0.1}}, [](auto) { return 0.1; });
    CHECK(variance_shares(model, options).front().first[0] == 0);
    CHECK(variance_shares(model, options).front().total[0] == 0);
}

TEST_CASE("an input that alone varies has all of the variance, at the fewest draws") {
    const Model model =
        one_output({Normal{1, 0.1}, Normal{1, 0}}, [](auto x) { return std::exp(x[0]) + x[1]; });
    VarianceSharesOptions options;
    options.draws = 1;
    const VarianceShares shares = variance_shares(model, options).front();
    CHECK(shares.first[0] == Approx(1).epsilon(1e-12));
    CHECK(shares.total[0] == Approx(1).epsilon(1e-12));
    CHECK(shares.first[1] == 0);
    CHECK(shares.total[1] == 0);
}
