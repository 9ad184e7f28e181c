// SPDX-License-Identifier: MIT
// Orders, ranks and weightings against enumeration and closed forms.
#include "compare/uncertainty/order.hpp"
#include "compare/uncertainty/weightings.hpp"

#include "assess/hazard/rank_agreement.hpp"
#include "base/random.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

using namespace routeweigh;
using doctest::Approx;

namespace {

FigureHeads heads(const std::vector<Better>& better) {
    FigureHeads result;
    for (const Better each : better) {
        Figure figure;
        figure.better = each;
        result.list.push_back(figure);
    }
    return result;
}

constexpr std::array<std::size_t, 1> first{0}; // figure, ranked

/// By more than rounding.
bool less(double a, double b) {
    return a < b && !(std::isfinite(b) && b - a < 1e-11);
}

/// Shares of draws, counted in the plainest way: route i beats j, and is at rank j.
struct PairByPair {
    std::vector<double> better, rank;

    PairByPair(const DrawBatch& batch, std::size_t routes, Better which)
        : better(routes * routes, 0.0), rank(routes * routes, 0.0) {
        const double one = 1.0 / static_cast<double>(batch.draws);
        for (std::size_t i = 0; i < routes; ++i)
            for (std::size_t d = 0; d < batch.draws; ++d) {
                std::size_t ahead = 0;
                for (std::size_t j = 0; j < routes; ++j) {
                    const double a = batch.values[i * batch.draws + d], b = batch.values[j * batch.draws + d];
                    const bool wins = which == Better::lower ? less(a, b) : less(b, a),
                               loses = which == Better::lower ? less(b, a) : less(a, b);
                    better[i * routes + j] += wins ? one : 0.0;
                    ahead += loses ? 1U : 0U;
                }
                rank[i * routes + ahead] += one;
            }
    }
};

double number(PhiloxStream& stream) {
    return static_cast<double>(stream() >> 11U) * 0x1p-53;
}

} // namespace

TEST_CASE("shares of ranks are those of every combination counted out") {
    // Three routes of three, two and two possible values: twelve combinations, ties among them.
    const std::vector<std::vector<double>> values{{1, 2, 5}, {2, 3}, {0, 4}};
    DrawBatch batch{12, std::vector<double>(std::size_t{3} * 2 * 12)};
    std::size_t d = 0;
    std::vector<std::vector<double>> rank(3, std::vector<double>(3, 0.0)), beats = rank;
    for (const double a : values[0])
        for (const double b : values[1])
            for (const double c : values[2]) {
                const double each[] = {a, b, c};
                for (std::size_t i = 0; i < 3; ++i) {
                    batch.values[(2 * i) * 12 + d] = each[i];
                    batch.values[(2 * i + 1) * 12 + d] = each[i];
                    std::size_t ahead = 0;
                    for (std::size_t j = 0; j < 3; ++j) {
                        ahead += each[j] < each[i] ? 1 : 0;
                        beats[i][j] += each[i] < each[j] ? 1.0 / 12 : 0.0;
                    }
                    rank[i][ahead] += 1.0 / 12;
                }
                ++d;
            }
    for (const int threads : {1, 2}) {
        OrderCounter counter(heads({Better::lower, Better::neither}), 3, 0, first, threads);
        counter.add(batch);
        counter.add(batch); // twice the same changes no share
        const std::vector<FigureOrder> orders = counter.result();
        for (std::size_t i = 0; i < 3; ++i)
            for (std::size_t j = 0; j < 3; ++j) {
                CHECK(orders[0].share_at_rank(i, j) == Approx(rank[i][j]));
                CHECK(orders[0].share_better(i, j) == Approx(beats[i][j]));
                CHECK(orders[1].share_better(i, j) == 0);
            }
    }
    OrderCounter higher(heads({Better::higher, Better::neither}), 3, 0, first, 1);
    higher.add(batch);
    CHECK(higher.result()[0].share_better(0, 1) == Approx(beats[1][0]));
}

TEST_CASE("orders of routes that overlap, lie apart, tie or lack a value are those counted pair by pair") {
    PhiloxStream stream(11, 0, 0);
    constexpr std::size_t routes = 9, draws = 203;
    for (int round = 0; round < 40; ++round) {
        DrawBatch batch{draws, std::vector<double>(routes * draws)};
        for (std::size_t r = 0; r < routes; ++r) {
            const double centre = std::floor(6.0 * number(stream)),
                         width = r % 3 == 0 ? 0.0 : 2.0 * number(stream);
            for (std::size_t d = 0; d < draws; ++d)
                batch.values[r * draws + d] = centre + width * number(stream);
        }
        // Equal but for the order of additions, which decides nothing.
        for (std::size_t d = 0; d < draws && round % 4 == 3; ++d)
            batch.values[std::size_t{7} * draws + d] =
                batch.values[std::size_t{6} * draws + d] * (1.0 + (d % 2 == 0 ? 2e-16 : -2e-16));
        if (round % 4 == 1) batch.values[2 * draws + 100] = std::nan("");
        if (round % 4 == 2) batch.values[3 * draws + 202] = std::numeric_limits<double>::infinity();
        for (const Better better : {Better::lower, Better::higher}) {
            OrderCounter counter(heads({better}), routes, 0, first, 1),
                against(heads({better}), routes, 4, {}, 1);
            against.add(batch);
            const FigureOrder of_baseline = against.result().front();
            counter.add(batch);
            const FigureOrder order = counter.result().front();
            const PairByPair counted(batch, routes, better);
            for (std::size_t i = 0; i < routes; ++i)
                for (std::size_t j = 0; j < routes; ++j) {
                    CHECK(order.share_better(i, j) == Approx(counted.better[i * routes + j]));
                    CHECK(order.share_at_rank(i, j) == Approx(counted.rank[i * routes + j]));
                    // Where no ranks are asked for, pairs with the baseline are counted all the same.
                    if (i == 4 || j == 4) CHECK(of_baseline.share_better(i, j) == order.share_better(i, j));
                }
        }
    }
}

TEST_CASE("share of weightings: small cases by hand") {
    const auto share = [](std::vector<double> d) { return share_of_weightings_below(d); };
    CHECK(share({-1, 1}) == Approx(0.5));
    CHECK(share({-3, 1}) == Approx(0.75)); // w d1 + (1 - w) d2 <= 0 for w from 1/4
    CHECK(share({-1, -2, -3}) == 1);
    CHECK(share({1, 2}) == 0);
    CHECK(share({0, 1}) == 0);
    CHECK(share({0, -1}) == 1);
    CHECK(share({0, 0}) == 0.5);
    CHECK(share({-1, 1, 1}) == Approx(0.25)); // w1 from 1/2: a triangle of half the side
    CHECK(share({1, -1, -1}) == Approx(0.75));
    CHECK(share({-2, 1, 0}) == Approx(2.0 / 3)); // of the side opposite to the third corner
}

TEST_CASE("share of weightings: the closed form of distinct values, and drawing") {
    // For distinct d: sum over d_i > 0 of d_i^(n-1) / product over j of (d_i - d_j) lie above 0.
    PhiloxStream stream(3, 0, 0);
    for (int round = 0; round < 50; ++round) {
        std::vector<double> d(5), zero(5, 0.0);
        for (double& each : d)
            each = 2.0 * number(stream) - 1.0;
        double above = 0.0;
        for (std::size_t i = 0; i < d.size(); ++i) {
            if (d[i] <= 0.0) continue;
            double term = std::pow(d[i], 4);
            for (std::size_t j = 0; j < d.size(); ++j)
                if (j != i) term /= d[i] - d[j];
            above += term;
        }
        const double share = share_of_weightings_below(d);
        CHECK(share == Approx(1.0 - above).epsilon(1e-6));
        const std::vector<double> drawn = shares_of_weightings_first({d, zero}, 40'000, 9);
        CHECK(std::abs(drawn[0] - share) < 5 * 0.0025); // five standard errors at most
        CHECK(drawn[0] + drawn[1] == Approx(1.0));
    }
}

TEST_CASE("a route that is never first has no lead and no share, and a lead comes from a weighting") {
    // The third lies above the middle of the first two everywhere.
    const std::vector<std::vector<double>> decades{{0, 2, 1}, {2, 0, 1}, {1.2, 1.2, 1.2}, {1.2, 1.2, 0.5}};
    CHECK(best_lead(decades, 2) == 0);
    CHECK(best_lead(decades, 0) == Approx(1.2)); // all weight on the first cell
    CHECK(best_lead(decades, 3) == Approx(0.5)); // all weight on the third
    const std::vector<double> shares = shares_of_weightings_first(decades, 20'000, 1);
    CHECK(shares[2] == 0);
    CHECK(std::accumulate(shares.begin(), shares.end(), 0.0) == Approx(1.0));
    CHECK(best_lead({{1, 2}, {1, 2}}, 0) == 0); // never strictly
}

TEST_CASE(
    "the share of first places of two routes is the exact one of their difference, in any unit of weight") {
    const std::vector<double> a{0.2, 1.5, 0.0, 3.0}, b{0.4, 1.0, 0.1, 2.0};
    std::vector<double> difference, scaled;
    for (std::size_t i = 0; i < a.size(); ++i) {
        difference.push_back(a[i] - b[i]);
        scaled.push_back(7.0 * (a[i] - b[i]));
    }
    CHECK(share_of_weightings_below(scaled) == Approx(share_of_weightings_below(difference)));
    CHECK(std::abs(shares_of_weightings_first({a, b}, 200'000, 4)[0] -
                   share_of_weightings_below(difference)) < 0.006);
}

TEST_CASE("Kendall's tau-b is that of SciPy") {
    // scipy.stats.kendalltau of SciPy 1.10.1, read off its output.
    const auto tau = [](std::vector<double> a, std::vector<double> b) { return *kendall_tau_b(a, b); };
    CHECK(tau({12, 2, 1, 12, 2}, {1, 4, 7, 1, 0}) == Approx(-0.47140452079103173)); // its own example
    CHECK(tau({1, 1, 2, 3, 3, 3, 4}, {2, 1, 2, 5, 5, 3, 1}) == Approx(0.2858309752375148));
    CHECK(tau({1, 2, 3, 4}, {1, 2, 3, 4}) == 1);
}
