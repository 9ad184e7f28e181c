// SPDX-License-Identifier: MIT
// Results of a class in place of the yield that a route states.
#include "app/found_yields.hpp"

#include "app/shipped.hpp"
#include "documents/report_view.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

Comparison compared(const std::vector<SourcePtr>& sources) {
    Problems problems;
    return compare_routes(read_routes(sources, Catalogue::embedded(), problems), "A1", rules());
}

std::vector<SourcePtr> as_shipped() {
    return {shipped("4-bromoacetanilide/A1")->route().source,
            shipped("4-bromoacetanilide/A7a")->route().source};
}

/// What the class found for a route of a comparison, as the program reads it.
FoundYields found(const Comparison& comparison, const std::string& id, const std::string& lines) {
    Problems problems;
    FoundYields result = read_found_yields(id, make_source("class.txt", lines), comparison, problems);
    CHECK(problems.all.empty());
    return result;
}

} // namespace

TEST_CASE("every figure rests on the mean of what was found, and no yield is called assumed") {
    const Comparison before = compared(as_shipped());
    // 2.140 g is all that can form of 1.352 g of acetanilide, so 1.07 g are half of it.
    const FoundYields first = found(before, "A1", "60 %\n70 %\n1.07 g\n");
    REQUIRE(first.yields.size() == 3);
    CHECK(first.yields[2] == doctest::Approx(0.5).epsilon(0.001));
    const double mean = (0.6 + 0.7 + first.yields[2]) / 3.0;
    const Comparison after = compared(with_found_yields(before, {first}));
    CHECK_FALSE(after.route(0).yield_assumed());
    CHECK(after.route(1).yield_assumed());
    CHECK(after.route(0).metric("yield") == doctest::Approx(100.0 * mean).epsilon(1e-12));
    // Inputs are the same, so intensities go as one over the yield.
    CHECK(after.route(0).metric("process_mass_intensity") ==
          doctest::Approx(before.route(0).metric("process_mass_intensity") * 0.8 / mean).epsilon(1e-9));
    CHECK(after.route(1).metric("process_mass_intensity") ==
          before.route(1).metric("process_mass_intensity"));
    CHECK(after.route(0).route().steps.front().isolated.note == "mean of 3 results; the file says 80 %");
}

TEST_CASE(
    "a route that a class has run is no longer called never run, whatever its yield was correlated with") {
    const auto designed = changed(
        *shipped("4-bromoacetanilide/A3"),
        {"/steps/0/isolated/yield=\"80 +/- 3 %\"", "/steps/0/isolated/spread=\"standard\"",
         "/steps/0/stages/0/charges/0/amount=\"1.3517 +/- 0.01 g\"",
         "/steps/0/stages/0/charges/0/spread=\"standard\"",
         R"(/correlations=[{"between": ["/steps/0/stages/0/charges/0", "/steps/0/isolated"], "coefficient": 0.5}])"});
    CHECK_FALSE(designed->route().was_run());
    const Comparison before =
        compared({shipped("4-bromoacetanilide/A1")->route().source, designed->route().source});
    const std::string id = designed->route().id;
    const Comparison after = compared(with_found_yields(before, {found(before, id, "70 %\n72 %\n")}));
    CHECK(after.route(1).route().was_run());
    CHECK(after.route(1).route().status == status::run_since);
    CHECK(after.route(1).route().correlated.pairs.empty());
    CHECK(after.route(1).metric("yield") == doctest::Approx(71.0));
}

TEST_CASE("no mass is called more or less that the scatter of two classes covers") {
    const Comparison before = compared(as_shipped());
    const auto verdict = [&](const std::string& one, const std::string& other) {
        const std::vector<FoundYields> both{found(before, "A1", one), found(before, "A7a", other)};
        const Comparison after = compared(with_found_yields(before, both));
        CHECK(after.against_baseline(1).mass == MassVerdict::higher); // by the means alone
        UncertaintyOptions options;
        options.found = both;
        MonteCarloOptions draws;
        draws.threads = 2;
        const Certainty certainty(after, options, draws);
        return documents::mass_verdict(after, &certainty, 1);
    };
    CHECK(verdict("70 %\n80 %\n90 %\n", "70 %\n80 %\n90 %\n") == MassVerdict::within_draws);
    CHECK(verdict("79 %\n80 %\n81 %\n", "59 %\n60 %\n61 %\n") == MassVerdict::higher);
}
