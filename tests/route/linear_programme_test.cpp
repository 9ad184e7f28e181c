// SPDX-License-Identifier: MIT
#include "route/linear_programme.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <random>
#include <vector>

using namespace routeweigh;
using doctest::Approx;

namespace {

using Rows = std::vector<std::vector<double>>;

LinearProgramme programme(const Rows& rows, std::vector<std::vector<double>> objectives) {
    LinearProgramme result(static_cast<int>(rows.size()), static_cast<int>(objectives.front().size()));
    for (std::size_t r = 0; r < rows.size(); ++r)
        for (std::size_t c = 0; c < rows[r].size(); ++c)
            result.at(static_cast<int>(r), static_cast<int>(c)) = rows[r][c];
    result.objectives = std::move(objectives);
    return result;
}

double dot(const std::vector<double>& a, const std::vector<double>& b) {
    double sum = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i)
        sum += a[i] * b[i];
    return sum;
}

bool allowed(const LinearProgramme& lp, const std::vector<double>& b, const std::vector<double>& x) {
    for (const double value : x)
        if (value < -1e-9) return false;
    for (int r = 0; r < lp.rows; ++r) {
        double used = 0.0;
        for (int c = 0; c < lp.columns; ++c)
            used += lp.at(r, c) * x[static_cast<std::size_t>(c)];
        if (used > b[static_cast<std::size_t>(r)] + 1e-9) return false;
    }
    return true;
}

/// A bounded programme: the first row holds every variable.
LinearProgramme random_programme(std::mt19937& draw, int rows, int columns, int levels) {
    std::uniform_int_distribution<int> cell(-3, 3), gain(-2, 4);
    LinearProgramme lp(rows, columns);
    for (int c = 0; c < columns; ++c)
        lp.at(0, c) = 1 + std::abs(cell(draw));
    for (int r = 1; r < rows; ++r)
        for (int c = 0; c < columns; ++c)
            lp.at(r, c) = cell(draw);
    for (int level = 0; level < levels; ++level) {
        std::vector<double> objective(static_cast<std::size_t>(columns));
        for (double& value : objective)
            value = gain(draw);
        lp.objectives.push_back(std::move(objective));
    }
    return lp;
}

std::vector<double> random_limits(std::mt19937& draw, int rows) {
    std::uniform_real_distribution<double> size(0.1, 9.0);
    std::bernoulli_distribution none(0.15);
    std::vector<double> b(static_cast<std::size_t>(rows));
    for (double& value : b)
        value = none(draw) ? 0.0 : size(draw);
    b.front() = size(draw);
    return b;
}

/// Where three planes meet, by Cramer's rule.
std::optional<std::vector<double>> meeting_point(const std::array<std::array<double, 4>, 3>& planes) {
    const auto determinant = [&](int replaced) {
        std::array<std::array<double, 3>, 3> m{};
        for (std::size_t r = 0; r < 3; ++r)
            for (std::size_t c = 0; c < 3; ++c)
                m[r][c] = static_cast<int>(c) == replaced ? planes[r][3] : planes[r][c];
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) -
               m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0]) +
               m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    };
    const double whole = determinant(-1);
    if (std::abs(whole) < 1e-9) return std::nullopt;
    return std::vector<double>{determinant(0) / whole, determinant(1) / whole, determinant(2) / whole};
}

/// The best corner of a programme in three variables, found by trying every corner.
std::vector<double> best_corner(const LinearProgramme& lp, const std::vector<double>& b) {
    std::vector<std::array<double, 4>> planes;
    for (int r = 0; r < lp.rows; ++r)
        planes.push_back({lp.at(r, 0), lp.at(r, 1), lp.at(r, 2), b[static_cast<std::size_t>(r)]});
    planes.push_back({1, 0, 0, 0});
    planes.push_back({0, 1, 0, 0});
    planes.push_back({0, 0, 1, 0});
    std::vector<double> best;
    std::vector<double> reached(lp.objectives.size(), -std::numeric_limits<double>::infinity());
    for (std::size_t i = 0; i < planes.size(); ++i)
        for (std::size_t j = i + 1; j < planes.size(); ++j)
            for (std::size_t k = j + 1; k < planes.size(); ++k) {
                const auto corner = meeting_point({planes[i], planes[j], planes[k]});
                if (!corner || !allowed(lp, b, *corner)) continue;
                for (std::size_t level = 0; level < lp.objectives.size(); ++level) {
                    const double value = dot(lp.objectives[level], *corner);
                    if (value < reached[level] - 1e-9) break;
                    if (value <= reached[level] + 1e-9) continue;
                    best = *corner;
                    for (std::size_t l = 0; l < lp.objectives.size(); ++l)
                        reached[l] = dot(lp.objectives[l], best);
                    break;
                }
            }
    return best;
}

} // namespace

TEST_CASE("a textbook programme: two products, three plants") {
    // Hillier & Lieberman, Introduction to Operations Research, the Wyndor Glass example (remembered).
    const auto lp = programme({{1, 0}, {0, 2}, {3, 2}}, {{3, 5}});
    const Optimum best = maximise(lp, std::vector<double>{4, 12, 18});
    CHECK(best.bounded);
    CHECK(best.x[0] == Approx(2));
    CHECK(best.x[1] == Approx(6));
}

TEST_CASE("a later objective only decides among the optima of those before it") {
    const Rows rows{{1, 1}, {1, 0}, {0, 1}};
    const std::vector<double> b{4, 3, 3};
    const Optimum second = maximise(programme(rows, {{1, 1}, {0, 1}}), b);
    CHECK(second.x[0] == Approx(1));
    CHECK(second.x[1] == Approx(3));
    const Optimum first = maximise(programme(rows, {{1, 1}, {1, 0}}), b);
    CHECK(first.x[0] == Approx(3));
    CHECK(first.x[1] == Approx(1));
    // What wants less of x is no reason to leave the optimum of the first objective, but decides at 0 weight.
    const Optimum third = maximise(programme(rows, {{0, 1}, {-1, 0}, {1, 0}}), b);
    CHECK(third.x[0] == Approx(0));
    CHECK(third.x[1] == Approx(3));
}

TEST_CASE("programmes that make the simplex method run in a circle come to an end") {
    // E. M. L. Beale, Naval Research Logistics Quarterly 1955, 2, 269 (remembered), in its two usual forms.
    SUBCASE("value 5/4") {
        const auto lp =
            programme({{0.25, -8, -1, 9}, {0.5, -12, -0.5, 3}, {0, 0, 1, 0}}, {{0.75, -20, 0.5, -6}});
        const Optimum best = maximise(lp, std::vector<double>{0, 0, 1});
        CHECK(best.bounded);
        CHECK(dot(lp.objectives[0], best.x) == Approx(1.25));
    }
    SUBCASE("value 1/20") {
        const auto lp =
            programme({{0.25, -60, -0.04, 9}, {0.5, -90, -0.02, 3}, {0, 0, 1, 0}}, {{0.75, -150, 0.02, -6}});
        const Optimum best = maximise(lp, std::vector<double>{0, 0, 1});
        CHECK(best.bounded);
        CHECK(dot(lp.objectives[0], best.x) == Approx(0.05));
        CHECK(best.x[0] == Approx(0.04));
        CHECK(best.x[2] == Approx(1));
    }
}

TEST_CASE("a programme without an end is called unbounded, also when only a later objective has none") {
    CHECK_FALSE(maximise(programme({{-1, 1}}, {{1, 0}}), std::vector<double>{1}).bounded);
    CHECK_FALSE(maximise(programme({{1, 0}}, {{1, 0}, {0, 1}}), std::vector<double>{1}).bounded);
    CHECK(maximise(programme({{1, 0}, {0, 1}}, {{1, 0}, {0, 1}}), std::vector<double>{1, 1}).bounded);
    CHECK(maximise(programme({{-1, 1}}, {{-1, 0}}), std::vector<double>{1}).bounded);
}

TEST_CASE("nothing to share out gives nothing, and the size of the numbers does not matter") {
    const auto lp = programme({{1, 2, 1}, {2, -1, 3}}, {{1, 1, 1}});
    const Optimum none = maximise(lp, std::vector<double>{0, 0});
    CHECK(none.bounded);
    CHECK(none.x == std::vector<double>{0, 0, 0});
    const Optimum ordinary = maximise(lp, std::vector<double>{3, 4});
    for (const double size : {1e-12, 1e-6, 1e6, 1e12}) {
        const Optimum scaled = maximise(lp, std::vector<double>{3 * size, 4 * size});
        for (std::size_t c = 0; c < 3; ++c)
            CHECK(scaled.x[c] == Approx(ordinary.x[c] * size).epsilon(1e-12));
    }
}

TEST_CASE("the optimum is the best of all corners") {
    std::mt19937 draw(11);
    for (int round = 0; round < 3000; ++round) {
        CAPTURE(round);
        const auto lp = random_programme(draw, 4, 3, 2);
        const std::vector<double> b = random_limits(draw, 4);
        const Optimum best = maximise(lp, b);
        REQUIRE(best.bounded);
        REQUIRE(allowed(lp, b, best.x));
        const std::vector<double> corner = best_corner(lp, b);
        REQUIRE(corner.size() == 3);
        for (const auto& objective : lp.objectives)
            REQUIRE(dot(objective, best.x) == Approx(dot(objective, corner)).epsilon(1e-9).scale(1.0));
    }
}

TEST_CASE("a kept basis gives the optimum for other limits, or says that it does not fit") {
    std::mt19937 draw(12);
    int fits = 0, misfits = 0;
    for (int round = 0; round < 3000; ++round) {
        CAPTURE(round);
        const auto lp = random_programme(draw, 6, 4, 3);
        const Optimum nominal = maximise(lp, random_limits(draw, 6));
        for (int again = 0; again < 3; ++again) {
            const std::vector<double> b = random_limits(draw, 6);
            std::vector<double> x(4, -1.0);
            if (!apply_basis<double>(nominal, b, x)) {
                ++misfits;
                continue;
            }
            ++fits;
            REQUIRE(allowed(lp, b, x));
            const Optimum afresh = maximise(lp, b);
            for (const auto& objective : lp.objectives)
                REQUIRE(dot(objective, x) == Approx(dot(objective, afresh.x)).epsilon(1e-9).scale(1.0));
        }
    }
    CHECK(fits > 500);
    CHECK(misfits > 500);
}
