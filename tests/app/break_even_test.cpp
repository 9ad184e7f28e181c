// SPDX-License-Identifier: MIT
#include "app/shipped.hpp"
#include "compare/break_even_answer.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

const std::string set = "4-bromoacetanilide/";

BreakEvenAnswer answer(const Assessment& route, const std::string& input, const std::string& figure,
                       double target) {
    return answer_break_even(route, find_input(route.route(), input), pick(figure), target,
                             apply_to(route.route(), Catalogue::embedded(), rules()));
}

} // namespace

TEST_CASE("with fixed inputs the break-even yield is yield x mass intensity over that of the baseline") {
    const auto baseline = shipped(set + "A1");
    const double target = baseline->metric("process_mass_intensity");
    for (const std::string id : {"A2", "A2b", "A3", "A3w", "A4", "A5", "A6", "A7a", "A7b"}) {
        CAPTURE(id);
        const auto route = shipped(set + id);
        const double expected = 80.0 * route->metric("process_mass_intensity") / target;
        const BreakEvenAnswer found = answer(*route, "yield", "process_mass_intensity", target);
        if (expected > 100.0) {
            CHECK(found.search.roots.empty());
            continue;
        }
        REQUIRE(found.search.roots.size() == 1);
        CHECK(found.search.roots.front() == doctest::Approx(expected).epsilon(1e-9));
    }
}

TEST_CASE("a break-even put back into the file makes the figures equal") {
    const auto baseline = shipped(set + "A1"), route = shipped(set + "A3");
    const Apply apply = apply_to(route->route(), Catalogue::embedded(), rules());
    int roots = 0;
    std::size_t first = 0;
    for (const std::string figure : {"process_mass_intensity", "hazard_score", "fire_bottle"}) {
        const FigurePick picked = pick(figure);
        const double target = picked.value(baseline->values());
        const auto inputs = numeric_inputs(route->route());
        // Each search reads the file many times: every input meets one of the three figures, in turn.
        for (std::size_t i = first++; i < inputs.size(); i += 3) {
            const NumericInput& input = inputs[i];
            const BreakEvenAnswer found = answer_break_even(*route, input, picked, target, apply);
            for (const double root : found.search.roots) {
                ++roots;
                CAPTURE(figure);
                CAPTURE(input.name());
                CAPTURE(root);
                const auto equal = changed(*route, {input.pointer + "=" + input.written(root)});
                CHECK(picked.value(equal->values()) == doctest::Approx(target).epsilon(1e-9));
            }
        }
    }
    CHECK(roots > 5);
}

TEST_CASE("a route breaks even with itself at the values it has") {
    const auto route = shipped(set + "A3");
    const double now = route->metric("process_mass_intensity");
    for (const std::string input : {"yield", "hydrobromic acid 48 %", "hydrogen peroxide 30 %"}) {
        const BreakEvenAnswer found = answer(*route, input, "process_mass_intensity", now);
        CAPTURE(input);
        REQUIRE_FALSE(found.search.roots.empty());
        CHECK(std::any_of(found.search.roots.begin(), found.search.roots.end(),
                          [&](double root) { return std::abs(root - found.input.value) < 1e-9 * root; }));
    }
}

TEST_CASE("below the stoichiometric amount a measured mass cannot be, and the answer says from where on") {
    // 20 g of cyclohexanol (100.16 g/mol) could give at most 29.2 g of adipic acid (146.14 g/mol), and 40 g
    // are isolated from 50 g: the least that gives 40 g is 27.41 g.
    const auto route = shipped("adipic-acid/E1");
    const BreakEvenAnswer found = answer(*route, "cyclohexanol", "process_mass_intensity", 5.0);
    CHECK(found.search.low_cut);
    CHECK(found.search.low == doctest::Approx(40.0 / 146.142 * 100.161).epsilon(1e-4));
    CHECK(found.low_reason.find("more") != std::string::npos);
}

TEST_CASE("what no input moves is told apart from what it equals") {
    const auto route = shipped(set + "A3");
    CHECK(answer(*route, "yield", "atom_economy", route->metric("atom_economy")).search.everywhere);
    const BreakEvenAnswer never = answer(*route, "yield", "atom_economy", 50.0);
    CHECK(never.search.constant);
    CHECK_FALSE(never.search.everywhere);
}
