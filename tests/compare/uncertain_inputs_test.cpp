// SPDX-License-Identifier: MIT
// From what a route file says of its inputs to draws of its figures.
#include "compare/uncertainty/uncertain_inputs.hpp"

#include "app/session.hpp"
#include "compare/uncertainty/certainty.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

constexpr std::string_view bromination = "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide";

/// 1.35 g of acetanilide and bromine in acetic acid, washed with water.
std::string bench_sheet(std::string_view id, std::string_view acid, std::string_view wash,
                        std::string_view isolated = R"("isolated": {"yield": "80 %"})",
                        std::string_view of_route = {}) {
    std::string more = R"("id": ")" + std::string(id) + '"';
    if (!of_route.empty()) more += ", " + std::string(of_route);
    return route("4-bromoacetanilide",
                 {step("4-bromoacetanilide", "acetanilide", bromination,
                       {stage("reaction",
                              {charge("acetanilide", "10 mmol", "substrate"),
                               charge("bromine", "1.06 eq", "reagent"), std::string(acid)},
                              {reaction(bromination)}),
                        stage("workup", {std::string(wash)}, {},
                              {filtration("filtrate", R"("keeps": ["4-bromoacetanilide"])")})},
                       isolated)},
                 more);
}

Comparison compared(const std::vector<std::string>& texts) {
    std::vector<SourcePtr> sources;
    for (const std::string& text : texts)
        sources.push_back(make_source("route.json", text));
    static const AssessmentRules rules = read_assessment_rules(Catalogue::embedded());
    Problems problems;
    return compare_routes(read_routes(sources, Catalogue::embedded(), problems), "", rules);
}

const std::string acid = charge("acetic acid", "7 g", "solvent");
const std::string acid_stated = charge("acetic acid", "7.0 +/- 0.5 g", "solvent", R"("spread": "standard")");
const std::string wash = charge("water", "50 g", "wash");

std::size_t figure(const Certainty& certainty, std::string_view id) {
    return certainty.model().heads().index_of(id);
}

MonteCarloOptions draws(std::size_t most) {
    MonteCarloOptions options;
    options.most = most;
    options.threads = 2;
    return options;
}

} // namespace

TEST_CASE("with spreads of nothing the draws are the plain figures, bit for bit") {
    const std::string none = R"("spread": "tolerance")";
    const Comparison comparison =
        compared({bench_sheet("a", charge("acetic acid", "7 +/- 0 g", "solvent", none), wash,
                              R"("isolated": {"yield": "80 +/- 0 %", "spread": "standard"})"),
                  bench_sheet("b", acid, charge("water", "3 x 15 +/- 0 mL", "wash", none))});
    const Certainty certainty(comparison, {}, draws(10'000));
    CHECK(certainty.model().inputs().inputs.size() == 3);
    for (std::size_t r = 0; r < 2; ++r) {
        const std::vector<Figure> plain = comparison.route(r).figures();
        for (std::size_t f = 0; f < plain.size(); ++f) {
            CAPTURE(plain[f].id);
            const DrawnOutput& drawn = certainty.figure(r, f);
            if (std::isnan(plain[f].value)) {
                CHECK(std::isnan(drawn.mean));
                continue;
            }
            CHECK(drawn.mean == plain[f].value);
            CHECK(drawn.deviation == 0);
            CHECK(drawn.low == plain[f].value);
            CHECK(drawn.high == plain[f].value);
        }
        const std::size_t same = figure(certainty, "same_auxiliaries_process_mass_intensity");
        CHECK(certainty.figure(r, same).mean ==
              comparison.against_baseline(r).same_auxiliaries.process_mass_intensity);
    }
    CHECK(certainty.verdict(0, 1, figure(certainty, "process_mass_intensity")) == PairVerdict::exact);
}

TEST_CASE("where a figure is linear in what varies, both ways agree with the arithmetic") {
    // PMI = inputs / (0.8 x theory), so 0.5 g of acid are 0.5 / 1.712 g/g.
    const Comparison comparison = compared({bench_sheet("a", acid_stated, wash)});
    const Certainty certainty(comparison, {}, draws(100'000));
    const std::size_t y = figure(certainty, "process_mass_intensity");
    const double expected = 0.5 / comparison.baseline().evaluation().product;
    CHECK(certainty.linear().deviation[y] == Approx(expected).epsilon(1e-9));
    CHECK(certainty.figure(0, y).deviation == Approx(expected).epsilon(0.01));
    CHECK(certainty.figure(0, y).high - certainty.figure(0, y).mean == Approx(1.96 * expected).epsilon(0.02));
    // The equation does not know how much acid there is.
    CHECK(certainty.figure(0, figure(certainty, "atom_economy")).deviation == 0);
}

TEST_CASE("what stands behind +/- decides the deviation") {
    const auto deviation = [](std::string_view meaning) {
        const Comparison comparison =
            compared({bench_sheet("a", charge("acetic acid", "7.0 +/- 0.6 g", "solvent", meaning), wash)});
        const UncertainInputs inputs = uncertain_inputs({&comparison.baseline()}, {});
        REQUIRE(inputs.inputs.size() == 1);
        return 7.0 * inputs.inputs[0].distribution.deviation();
    };
    CHECK(deviation(R"("spread": "standard")") == Approx(0.6));
    CHECK(deviation(R"("spread": "expanded k=2")") == Approx(0.3));
    CHECK(deviation(R"("spread": "tolerance")") == Approx(0.6 / std::sqrt(3.0)));
    CHECK(deviation(R"("spread": "triangular tolerance")") == Approx(0.6 / std::sqrt(6.0)));
}

TEST_CASE("one cylinder errs alike in both routes, so their difference does not know its error") {
    const std::string cylinder = R"("measured_with": {"liquids": "measuring cylinder 50 mL class B"})";
    const std::string yield = R"("isolated": {"yield": "80 %"})";
    const Comparison comparison =
        compared({bench_sheet("a", acid, charge("water", "40 g", "wash"), yield, cylinder), // filled once
                  bench_sheet("b", acid, charge("water", "39 g", "wash"), yield, cylinder)});
    const UncertainInputs inputs = uncertain_inputs({&comparison.route(0), &comparison.route(1)}, {});
    // A reading each of acid and water in both, and the error of the cylinder, once.
    REQUIRE(inputs.inputs.size() == 5);
    std::size_t shared = 0;
    for (const auto& effects : inputs.effects)
        for (const InputEffect& effect : effects)
            if (inputs.inputs[effect.input].name.find("its own error") != std::string::npos) {
                ++shared;
                CHECK(inputs.inputs[effect.input].distribution.greatest() == 1.0); // ISO 4788, class B, 50 mL
            }
    CHECK(shared == 4);
    const Certainty certainty(comparison, {}, draws(100'000));
    const std::size_t y = figure(certainty, "process_mass_intensity");
    // One gram less of water is seen although the cylinder alone may be off by one: of the readings of a
    // quarter of a division (0.25 mL) two of water and two of acid are left.
    const double product = comparison.baseline().evaluation().product;
    const double difference = 1.0 / product;
    const double density = 1.049; // acetic acid, g/mL, to a per cent
    const double scatter = 0.25 * std::sqrt(2.0 + 2.0 * density * density) / product;
    const double expected = 0.5 * std::erfc(-difference / scatter / std::sqrt(2.0));
    CHECK(certainty.order(y).share_better(1, 0) == Approx(expected).epsilon(0.01));
}

TEST_CASE("the strength of a bottle moves what it brings and leaves the ledger closed") {
    const std::string bottle = R"("bottles": [{"material": "hydrobromic acid 48 %", "strength": "48 +/- 1 %",
                                   "spread": "tolerance"}])";
    const Comparison comparison =
        compared({bench_sheet("a", charge("hydrobromic acid 48 %", "5 g", "solvent"), wash,
                              R"("isolated": {"yield": "80 %"})", bottle)});
    const UncertainInputs uncertain = uncertain_inputs({&comparison.baseline()}, {});
    REQUIRE(uncertain.inputs.size() == 1);
    const FlatRoute& flat = comparison.baseline().flat();
    Inputs inputs;
    const double strong = 49.0 / 48.0;
    CHECK(apply<double>(uncertain.effects[0], flat.nominal(), std::span(&strong, 1), flat, inputs) == 0);
    double all = 0.0;
    for (std::size_t i = 0; i < flat.inflows().size(); ++i) {
        if (flat.inflows()[i].fraction == 1.0) continue;
        all += inputs.fractions[i];
        CHECK(inputs.fractions[i] == Approx(flat.inflows()[i].carrier ? 0.51 : 0.49));
    }
    CHECK(all == Approx(1.0));
}

TEST_CASE(
    "results of a class are drawn as they are; what would leave the physical range is held and counted") {
    UncertaintyOptions options;
    options.found = {{"a", -1, {0.5, 0.7, 0.9}}};
    const Comparison comparison = compared(
        {bench_sheet("a", acid, wash, R"("isolated": {"yield": "80 %", "assumed": true})"),
         bench_sheet("b", acid, wash, R"("isolated": {"yield": "95 +/- 2.5 %", "spread": "standard"})")});
    const Certainty certainty(comparison, options, draws(100'000));
    const std::size_t yield = figure(certainty, "yield");
    CHECK(certainty.figure(0, yield).mean == Approx(70).epsilon(0.005));
    CHECK(certainty.figure(0, yield).low == Approx(50));
    CHECK(certainty.figure(0, yield).high == Approx(90));
    CHECK_FALSE(certainty.model().rests_on_assumed_yield(0, yield)); // it was assumed, and now it was found
    CHECK(certainty.drawn().outputs[certainty.model().out_of_range_output()].mean ==
          Approx(0.0228).epsilon(0.1)); // beyond two deviations on one side
    CHECK(certainty.figure(1, yield).high <= 100);
}

TEST_CASE("a figure on an assumed yield has no share of runs") {
    const std::string assumed = R"("isolated": {"yield": "80 %", "assumed": true})";
    const Comparison comparison =
        compared({bench_sheet("a", acid_stated, wash, assumed), bench_sheet("b", acid, wash, assumed),
                  bench_sheet("c", acid, charge("water", "500 g", "wash"), assumed)});
    for (const double half_width : {0.0, 0.1}) {
        UncertaintyOptions options;
        options.assumed_yield_half_width = half_width;
        const Certainty certainty(comparison, options, draws(10'000));
        const std::size_t pmi = figure(certainty, "process_mass_intensity");
        CHECK(certainty.model().rests_on_assumed_yield(0, pmi));
        CHECK(certainty.verdict(0, 1, pmi) == PairVerdict::rests_on_assumed);
        CHECK_FALSE(certainty.holds_for_plausible_yields(0, 1, pmi));
        CHECK(certainty.holds_for_plausible_yields(0, 2, pmi)); // ten times the water is no matter of yield
        CHECK_FALSE(certainty.model().rests_on_assumed_yield(0, figure(certainty, "atom_economy")));
        CHECK((certainty.figure(1, pmi).deviation > 0.0) == (half_width > 0.0));
    }
}

TEST_CASE("results that cannot be are refused") {
    const Comparison comparison = compared({bench_sheet("a", acid, wash)});
    const auto with = [&](FoundYields found) {
        UncertaintyOptions options;
        options.found = {std::move(found)};
        return uncertain_inputs({&comparison.baseline()}, options);
    };
    CHECK_THROWS_AS(with({"a", -1, {}}), InputError);
    CHECK_THROWS_AS(with({"b", -1, {0.5}}), InputError);
    CHECK_THROWS_AS(with({"a", -1, {1.2}}), InputError);
    CHECK_THROWS_AS(with({"a", -1, {0.0}}), InputError);
    CHECK_NOTHROW(with({"a", 0, {0.5}}));
}

TEST_CASE("stated correlations are kept by both ways") {
    // Two amounts of 1 g deviation each: their sum has the deviation sqrt(2 + 2 r).
    for (const double r : {-1.0, -0.5, 0.8, 1.0}) {
        CAPTURE(r);
        const std::string correlated =
            R"("correlations": [{"between": ["/steps/0/stages/0/charges/2", "/steps/0/stages/1/charges/0"],
                                 "coefficient": )" +
            std::to_string(r) + "}]";
        const std::string normal = R"("spread": "standard")";
        const Comparison comparison = compared({bench_sheet(
            "a", charge("acetic acid", "7 +/- 1 g", "solvent", normal),
            charge("water", "50 +/- 1 g", "wash", normal), R"("isolated": {"yield": "80 %"})", correlated)});
        const Certainty certainty(comparison, {}, draws(100'000));
        const std::size_t y = figure(certainty, "process_mass_intensity");
        const double expected = std::sqrt(2.0 + 2.0 * r) / comparison.baseline().evaluation().product;
        CHECK(certainty.linear().deviation[y] == Approx(expected).epsilon(1e-6));
        CHECK(certainty.figure(0, y).deviation == Approx(expected).epsilon(0.01));
    }
}

TEST_CASE("what a route charges twice is told apart by number, what it charges once has no number") {
    const std::string cylinder = R"("measured_with": "measuring cylinder 50 mL class B")";
    const Comparison comparison = compared({bench_sheet("a", acid_stated,
                                                        charge("water", "50 mL", "wash", cylinder) + ", " +
                                                            charge("water", "20 mL", "wash", cylinder))});
    const Certainty certainty(comparison, {}, draws(10'000));
    std::vector<std::string> names;
    for (const UncertainInput& input : certainty.model().inputs().inputs)
        names.push_back(input.name);
    CHECK(std::count(names.begin(), names.end(), "acetic acid (solvent)") == 1);
    CHECK(std::count(names.begin(), names.end(), "water (wash, 1 of 2), reading") == 1);
    CHECK(std::count(names.begin(), names.end(), "water (wash, 2 of 2), reading") == 1);
    std::sort(names.begin(), names.end());
    CHECK(std::adjacent_find(names.begin(), names.end()) == names.end());
}

TEST_CASE("equal yields stay equal however their sums are rounded, and classes with values in common tie") {
    const std::string cylinder = R"("measured_with": "measuring cylinder 50 mL class B")";
    const std::string a = bench_sheet("a", acid_stated, wash),
                      b = bench_sheet("b", acid_stated, charge("water", "33 mL", "wash", cylinder)),
                      c = bench_sheet(
                          "c", charge("acetic acid", "7.0 +/- 2 g", "solvent", R"("spread": "standard")"),
                          wash);
    const Comparison comparison = compared({a, b, c});
    const Certainty certainty(comparison, {}, draws(10'000));
    const std::size_t yield = figure(certainty, "yield");
    for (const std::size_t route : {std::size_t{1}, std::size_t{2}}) {
        CHECK(certainty.verdict(route, 0, yield) == PairVerdict::exact);
        CHECK(certainty.order(yield).share_better(route, 0) == 0.0);
        CHECK(certainty.order(yield).share_better(0, route) == 0.0);
    }

    // Six results each; a pair of draws ties where both have 71 or 78 %.
    UncertaintyOptions options;
    options.found = {{"a", -1, {0.71, 0.75, 0.78, 0.80, 0.68, 0.74}},
                     {"b", -1, {0.81, 0.71, 0.88, 0.83, 0.78, 0.84}}};
    const Certainty of_classes(comparison, options, draws(200'000));
    // 81, 83, 84 and 88 beat all six; 78 beats four and ties with one; 71 beats one and ties with one.
    CHECK(of_classes.order(yield).share_better(1, 0) == Approx((4 * 6 + 4 + 1) / 36.0).epsilon(0.005));
    CHECK(of_classes.order(yield).share_better(0, 1) == Approx((1 + 4) / 36.0).epsilon(0.02));
}
