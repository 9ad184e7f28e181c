// SPDX-License-Identifier: MIT
// Propagation against the worked examples of the standards. Their figures are remembered, and each is also
// what the formula beside it gives.
#include "compare/uncertainty/linear.hpp"
#include "compare/uncertainty/monte_carlo.hpp"
#include "compare/uncertainty/parallel.hpp"
#include "models.hpp"

#include <doctest/doctest.h>

#include <atomic>
#include <cmath>
#include <stdexcept>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

double sum(std::span<const double> x) {
    double result = 0.0;
    for (const double value : x)
        result += value;
    return result;
}

/// A rectangular distribution of this standard deviation about 0.
Rectangular rectangular(double deviation) {
    return {-std::sqrt(3.0) * deviation, std::sqrt(3.0) * deviation};
}

DrawnOutput drawn(const Model& model, std::size_t draws = 1'000'000, std::uint64_t seed = 1) {
    MonteCarloOptions options;
    options.seed = seed;
    options.most = draws;
    options.threads = 2;
    return propagate_draws(model, options).outputs.front();
}

} // namespace

TEST_CASE("JCGM 101:2008, 9.2.2: four normal quantities of deviation 1") {
    const Model model = one_output({Normal{0, 1}, Normal{0, 1}, Normal{0, 1}, Normal{0, 1}}, sum);
    const LinearResult linear = propagate_linearly(model);
    CHECK(linear.value[0] == 0);
    CHECK(linear.deviation[0] == Approx(2.00));
    for (const double part : linear.contribution[0])
        CHECK(part == Approx(1));
    const DrawnOutput y = drawn(model);
    CHECK(std::abs(y.mean) < 0.01);
    CHECK(y.deviation == Approx(2.00).epsilon(0.005));
    CHECK(y.low == Approx(-3.92).epsilon(0.005)); // 1.96 x 2
    CHECK(y.high == Approx(3.92).epsilon(0.005));
}

TEST_CASE("JCGM 101:2008, 9.2.3: four rectangular quantities of deviation 1") {
    const Model model = one_output({rectangular(1), rectangular(1), rectangular(1), rectangular(1)}, sum);
    CHECK(propagate_linearly(model).deviation[0] == Approx(2.00));
    const DrawnOutput y = drawn(model);
    CHECK(y.deviation == Approx(2.00).epsilon(0.005));
    // 9.2.3.4, analytically: 2 sqrt(3) (2 - (3/5)^(1/4)) = 3.88.
    const double end = 2 * std::sqrt(3.0) * (2 - std::pow(0.6, 0.25));
    CHECK(end == Approx(3.88).epsilon(0.001));
    CHECK(y.low == Approx(-end).epsilon(0.005));
    CHECK(y.high == Approx(end).epsilon(0.005));
}

TEST_CASE("JCGM 101:2008, 9.2.4: three rectangular quantities of deviation 1 and one of 10") {
    const Model model = one_output({rectangular(1), rectangular(1), rectangular(1), rectangular(10)}, sum);
    CHECK(propagate_linearly(model).deviation[0] == Approx(10.1).epsilon(0.005)); // sqrt(103) = 10.15
    const DrawnOutput y = drawn(model);
    CHECK(y.deviation == Approx(std::sqrt(103.0)).epsilon(0.005));
    CHECK(y.low == Approx(-17.0).epsilon(0.005)); // the linear way would say 1.96 x 10.1 = 19.9
    CHECK(y.high == Approx(17.0).epsilon(0.005));
}

TEST_CASE("JCGM 101:2008, 9.3: calibration of a mass of 100 g, of which the linear way sees too little") {
    // Deviation from nominal in mg: (mR + dmR) (1 + (a - 1.2)(1/rW - 1/rR)) - 100 000, density in kg/m3.
    const Model model =
        one_output({Normal{100000.000, 0.050}, Normal{1.234, 0.020}, Rectangular{1.10, 1.30},
                    Rectangular{7000, 9000}, Rectangular{7950, 8050}},
                   [](std::span<const double> x) {
                       return (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100000;
                   });
    const LinearResult linear = propagate_linearly(model);
    CHECK(linear.value[0] == Approx(1.2340).epsilon(1e-6));
    CHECK(linear.deviation[0] == Approx(0.0539).epsilon(0.001).scale(0)); // table 5, first order
    const DrawnOutput y = drawn(model);
    CHECK(y.mean == Approx(1.2341).epsilon(0.0005));
    CHECK(y.deviation == Approx(0.0754).epsilon(0.004).scale(0));
    CHECK(y.low == Approx(1.0834).epsilon(0.001)); // probabilistically symmetric, as 9.3.2 gives it
    CHECK(y.high == Approx(1.3825).epsilon(0.001));
}

TEST_CASE("EURACHEM/CITAC CG 4, example A1: a cadmium standard of 1002.7 +/- 1.8 mg/L") {
    // 1000 m P / V with m = 100.28(5) mg, P = 0.9999 +/- 0.0001, V = 100 mL: flask +/- 0.1 mL triangular,
    // filling 0.02 mL, 4 degC of 2.1e-4 per degC rectangular.
    const double warmth = 100 * 4 * 2.1e-4;
    const Model model =
        one_output({Normal{100.28, 0.05}, Rectangular{0.9998, 1.0}, Triangular{99.9, 100, 100.1},
                    Normal{0, 0.02}, Rectangular{-warmth, warmth}},
                   [](std::span<const double> x) { return 1000 * x[0] * x[1] / (x[2] + x[3] + x[4]); });
    const LinearResult linear = propagate_linearly(model);
    CHECK(linear.value[0] == Approx(1002.7).epsilon(1e-5));
    CHECK(linear.deviation[0] == Approx(0.835).epsilon(0.01)); // printed as 0.9, and 0.835 before rounding up
    CHECK(std::abs(linear.contribution[0][0]) == Approx(0.50).epsilon(0.01));           // of the mass
    CHECK(std::abs(linear.contribution[0][1]) == Approx(0.058).epsilon(0.01).scale(0)); // of the purity
    CHECK(std::hypot(linear.contribution[0][2], linear.contribution[0][3], linear.contribution[0][4]) ==
          Approx(0.66).epsilon(0.02)); // of the volume: 0.07 mL, printed as 0.7
    const DrawnOutput y = drawn(model, 200'000);
    CHECK(y.deviation == Approx(linear.deviation[0]).epsilon(0.01));
}

TEST_CASE("EURACHEM/CITAC CG 4, example A2: the molar mass of potassium hydrogen phthalate") {
    // C8H5KO4 with the atomic weights of 1997 and their intervals, each taken as rectangular.
    const auto weight = [](double value, double half) { return Rectangular{value - half, value + half}; };
    const Model model = one_output(
        {weight(12.0107, 0.0008), weight(1.00794, 0.00007), weight(39.0983, 0.0001), weight(15.9994, 0.0003)},
        [](std::span<const double> x) { return 8 * x[0] + 5 * x[1] + x[2] + 4 * x[3]; });
    const LinearResult linear = propagate_linearly(model);
    CHECK(linear.value[0] == Approx(204.2212).epsilon(1e-6));
    CHECK(linear.deviation[0] == Approx(0.0038).epsilon(0.01).scale(0));
    CHECK(linear.contribution[0][0] == Approx(0.0037).epsilon(0.01).scale(0)); // of the eight atoms of carbon
}

TEST_CASE("where a model is linear, both ways agree") {
    const Model model = one_output(
        {Normal{5, 0.3}, Rectangular{1, 3}, Triangular{0, 1, 1}, Pert{2, 3, 10}, Empirical{{1, 4, 4, 6}}},
        [](std::span<const double> x) { return 2 * x[0] - x[1] + 0.5 * x[2] + x[3] - 0.25 * x[4]; });
    const LinearResult linear = propagate_linearly(model);
    const DrawnOutput y = drawn(model);
    CHECK(y.mean == Approx(linear.value[0]).epsilon(0.001));
    CHECK(y.deviation == Approx(linear.deviation[0]).epsilon(0.003));
}

TEST_CASE("an interval covers the share of truths that it claims to") {
    // A true value is drawn about what was read, by the same distributions: the interval about the reading
    // must hold it in 95 of 100 cases. Non-linear, mixed inputs; other random numbers for the truths.
    const auto product = [](std::span<const double> x) { return x[0] * x[1] / (1 + x[2]); };
    const Model model = one_output({Normal{10, 1}, Rectangular{0.5, 1.5}, Pert{0, 0.1, 1}}, product);
    for (const double coverage : {0.5, 0.9, 0.95}) {
        MonteCarloOptions options;
        options.most = 200'000;
        options.coverage = coverage;
        const DrawnOutput y = propagate_draws(model, options).outputs.front();
        std::size_t inside = 0, truths = 0;
        std::vector<double> column;
        DrawRows rows;
        for (std::uint64_t chunk = 0; chunk < 400; ++chunk) {
            draw_chunk(model.inputs, 77, chunk, column, rows);
            for (std::size_t d = 0; d < chunk_draws; ++d, ++truths) {
                const double truth = product(rows.row(d));
                inside += y.low <= truth && truth <= y.high ? 1 : 0;
            }
        }
        // Five standard errors of a share of 100 000.
        CHECK(double(inside) / double(truths) == Approx(coverage).epsilon(5 * 0.0016));
    }
}

TEST_CASE("the same seed gives the same numbers on any number of threads, another seed others") {
    const Model model = one_output({Normal{1, 0.1}, Pert{0, 1, 3}}, [](auto x) { return x[0] * x[1]; });
    MonteCarloOptions options;
    options.most = 3 * batch_draws;
    const DrawnOutput one = propagate_draws(model, options).outputs.front();
    for (const int threads : {2, 3, 7}) {
        options.threads = threads;
        const DrawnOutput more = propagate_draws(model, options).outputs.front();
        CHECK(more.mean == one.mean);
        CHECK(more.deviation == one.deviation);
        CHECK(more.low == one.low);
        CHECK(more.high == one.high);
    }
    options.seed = 2;
    CHECK(propagate_draws(model, options).outputs.front().mean != one.mean);
}

TEST_CASE("the tolerance is half a unit in the last digit asked for") {
    CHECK(numerical_tolerance(0.35, 2) == Approx(0.005));       // JCGM 101:2008, 7.9.2, example 2: 0.35 g
    CHECK(numerical_tolerance(0.00003, 1) == Approx(0.000005)); // ibid., example 1: 0.00003 g
    CHECK(numerical_tolerance(2, 1) == Approx(0.5));            // ibid., example 3: 2 K
    CHECK(numerical_tolerance(0.0996, 2) == Approx(0.005));
    CHECK(numerical_tolerance(0, 2) == 0);
}

TEST_CASE("drawing goes on until the digits are stable, and not longer") {
    const Model model = one_output({Normal{0, 1}, Normal{0, 1}, Normal{0, 1}, Normal{0, 1}}, sum);
    MonteCarloOptions options;
    options.most = 10'000'000;
    options.digits = 1;
    const MonteCarloResult rough = propagate_draws(model, options);
    CHECK(rough.outputs.front().stable);
    CHECK(rough.draws < 100'000);
    options.digits = 2;
    const MonteCarloResult fine = propagate_draws(model, options);
    CHECK(fine.outputs.front().stable);
    CHECK(fine.draws > rough.draws);
    CHECK(fine.draws < 10'000'000);
    options.most = 20'000; // too few for two digits
    CHECK_FALSE(propagate_draws(model, options).outputs.front().stable);
}

TEST_CASE("an output that only a few draws move keeps no run going, and a rounding is no contribution") {
    // One draw in some 30 000 lies beyond four deviations.
    MonteCarloOptions options;
    options.most = 50 * batch_draws;
    options.digits = 1;
    const Model rare = one_output({Normal{0, 1}}, [](auto x) { return std::max(0.0, x[0] - 4.0); });
    const MonteCarloResult stopped = propagate_draws(rare, options);
    CHECK(stopped.draws == 2 * batch_draws);
    CHECK(stopped.outputs.front().stable);
    // One in twenty on either side is seen by the interval, so that one is drawn for.
    const Model common = one_output({Normal{0, 1}}, [](auto x) { return std::max(0.0, x[0] - 1.7); });
    CHECK(propagate_draws(common, options).draws > 2 * batch_draws);

    const Model rounded = one_output({Normal{1, 0.1}, Normal{1, 0.1}},
                                     [](auto x) { return 80.0 * x[0] / x[0] + 1e-14 * x[1]; });
    CHECK(propagate_linearly(rounded).deviation[0] == 0.0);
    const Model small = one_output({Normal{1, 0.1}}, [](auto x) { return 80.0 + 1e-9 * x[0]; });
    CHECK(propagate_linearly(small).deviation[0] == Approx(1e-10).scale(0).epsilon(1e-3));
}

TEST_CASE("a run ends when what was asked for is stable, whatever else is not") {
    Model model = one_output({Normal{0, 1}, Rectangular{0, 1}}, sum);
    model.outputs = 2;
    model.evaluator = [] {
        return [](const DrawRows& x, DrawRows& y) {
            for (std::size_t row = 0; row < x.rows; ++row) {
                y.row(row)[0] = x.row(row)[0];
                // A tail so heavy that its deviation never settles.
                y.row(row)[1] = 1.0 / std::pow(1e-12 + x.row(row)[1], 0.9);
            }
        };
    };
    MonteCarloOptions options;
    options.most = 30 * batch_draws;
    options.digits = 1;
    CHECK(propagate_draws(model, options).draws == 30 * batch_draws);
    options.asked = {0};
    const MonteCarloResult result = propagate_draws(model, options);
    CHECK(result.draws < 30 * batch_draws);
    CHECK(result.outputs[0].stable);
    CHECK_FALSE(result.outputs[1].stable);
}

TEST_CASE("a run can be stopped between batches and tells so") {
    const Model model = one_output({Normal{0, 1}}, sum);
    MonteCarloOptions options;
    options.most = 100 * batch_draws;
    options.go_on = [](const MonteCarloProgress& progress) { return progress.draws < 3 * batch_draws; };
    const MonteCarloResult result = propagate_draws(model, options);
    CHECK(result.interrupted);
    CHECK(result.draws == 3 * batch_draws);
    CHECK(result.outputs.front().deviation == Approx(1).epsilon(0.03));
}

TEST_CASE("an output that has no value in some draw has none, and one that does not vary is exact") {
    Model model = one_output({Normal{0, 1}}, [](auto x) { return x[0] > 3 ? std::nan("") : x[0]; });
    CHECK(std::isnan(drawn(model, batch_draws).mean));
    model = one_output({Normal{0, 1}}, [](auto) { return 0.1; });
    const DrawnOutput y = drawn(model, 3 * batch_draws);
    CHECK(y.mean == 0.1);
    CHECK(y.deviation == 0);
    CHECK(y.low == 0.1);
    CHECK(y.high == 0.1);
}

TEST_CASE("where nothing varies, the value is what it is both ways") {
    const Model model = one_output({}, [](std::span<const double>) { return 5.0; });
    CHECK(propagate_linearly(model).value[0] == 5.0);
    CHECK(propagate_linearly(model).deviation[0] == 0.0);
    const DrawnOutput y = drawn(model, 1000);
    CHECK(y.mean == 5.0);
    CHECK(y.deviation == 0.0);
}

TEST_CASE("every piece is done once, and what goes wrong in one is thrown") {
    for (const int threads : {1, 2, 5}) {
        std::vector<std::atomic<int>> done(1000);
        for_each_piece(threads, done.size(), [&](std::size_t, std::size_t index) { ++done[index]; });
        for (const auto& count : done)
            REQUIRE(count == 1);
        CHECK_THROWS_AS(for_each_piece(threads, 100,
                                       [](std::size_t, std::size_t index) {
                                           if (index == 57) throw std::runtime_error("57");
                                       }),
                        std::runtime_error);
    }
}
