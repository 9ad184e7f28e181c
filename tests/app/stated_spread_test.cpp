// SPDX-License-Identifier: MIT
// Routes whose numbers carry a spread of their own answer the same questions as those whose numbers carry
// none.
#include "app/shipped.hpp"
#include "compare/break_even_answer.hpp"

#include <doctest/doctest.h>
#include <fmt/core.h>

#include <algorithm>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

const std::string charge = "/steps/0/stages/0/charges/";

/// With the first charge.
std::string correlation(const std::string& other) {
    return fmt::format(R"({{"between": ["{}0", "{}"], "coefficient": 0.5}})", charge, other);
}

/// A3 as shipped, its numbers with spreads of three kinds, two of them correlated.
std::unique_ptr<Assessment> with_spreads() {
    return changed(
        *shipped("4-bromoacetanilide/A3"),
        {charge + "0/amount=\"1.3517 +/- 0.01 g\"", charge + "0/spread=\"standard\"",
         charge + "1/amount=\"6.48 +/- 0.2 g\"", charge + "1/spread=\"tolerance\"",
         "/steps/0/stages/3/charges/0/spread={\"kind\": \"PERT\", \"from\": \"10 g\", \"to\": \"13 g\"}",
         charge + "2/amount=\"2.107 +/- 0.02 g\"", charge + "2/spread=\"standard\"",
         "/steps/0/isolated/yield=\"80 +/- 3 %\"", "/steps/0/isolated/spread=\"standard\"",
         fmt::format("/correlations=[{}, {}]", correlation("/steps/0/isolated"), correlation(charge + "2"))});
}

} // namespace

TEST_CASE("a spread changes no break-even, and hides none") {
    const auto plain = shipped("4-bromoacetanilide/A3"), spread = with_spreads();
    REQUIRE(plain->metric("process_mass_intensity") ==
            doctest::Approx(spread->metric("process_mass_intensity")).epsilon(1e-12));
    const Apply on_plain = apply_to(plain->route(), Catalogue::embedded(), rules()),
                on_spread = apply_to(spread->route(), Catalogue::embedded(), rules());
    const auto inputs = numeric_inputs(plain->route()), same = numeric_inputs(spread->route());
    REQUIRE(inputs.size() == same.size());
    std::size_t found = 0;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        if (inputs[i].kind != NumericInput::Kind::amount && inputs[i].kind != NumericInput::Kind::yield)
            continue;
        CAPTURE(inputs[i].name());
        const FigurePick mass = pick("process_mass_intensity");
        const auto one = answer_break_even(*plain, inputs[i], mass, 50.0, on_plain),
                   other = answer_break_even(*spread, same[i], mass, 50.0, on_spread);
        REQUIRE(one.search.roots.size() == other.search.roots.size());
        for (std::size_t r = 0; r < one.search.roots.size(); ++r)
            CHECK(one.search.roots[r] == doctest::Approx(other.search.roots[r]).epsilon(1e-9));
        found += other.search.roots.size();
    }
    CHECK(found > 5);
}

TEST_CASE("the same improvements are found whether numbers carry a spread or not") {
    const SolventRules solvents = read_solvent_rules(Catalogue::embedded());
    const auto of = [&](const Assessment& route) {
        return find_improvements(
            {route, solvents, {}, apply_to(route.route(), Catalogue::embedded(), rules())},
            pick("process_mass_intensity"), 6);
    };
    const Improvements plain = of(*shipped("4-bromoacetanilide/A3")), spread = of(*with_spreads());
    CHECK(spread.refused.size() == plain.refused.size());
    REQUIRE(spread.ranked.size() == plain.ranked.size());
    for (std::size_t i = 0; i < plain.ranked.size(); ++i)
        CHECK(spread.ranked[i].gain == doctest::Approx(plain.ranked[i].gain).epsilon(1e-6));
    CHECK(plain.pairs_tried == 15);
    CHECK(spread.interactions.size() == plain.interactions.size());
    for (std::size_t i = 0; i < plain.interactions.size(); ++i)
        CHECK(spread.interactions[i].refused == plain.interactions[i].refused);
}

TEST_CASE("a number put in place of one with a spread takes the spread with it, unless it brings its own") {
    const auto spread = with_spreads();
    const auto plain = changed(*spread, {"yield=\"65 %\""});
    CHECK(plain->metric("yield") == doctest::Approx(65));
    CHECK_FALSE(plain->route().steps[0].isolated.spread.has_value());
    CHECK(plain->route().steps[0].stages[0].charges[0].spread.has_value());
    REQUIRE(plain->route().correlated.pairs.size() ==
            1); // and what the yield was correlated with stays alone
    CHECK(plain->route().correlated.pairs[0].second == charge + "2");
    const auto kept = changed(*spread, {"yield=\"65 +/- 2 %\""});
    REQUIRE(kept->route().steps[0].isolated.spread.has_value());
    CHECK(kept->route().steps[0].isolated.spread->deviation() == doctest::Approx(0.02 / 0.65).epsilon(1e-9));
}
