// SPDX-License-Identifier: MIT
// Properties of the hazard figures on random charges.
#include "hazard_case.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

void check_order_of_ends(const HazardValues& values) {
    for (std::size_t cell = 0; cell < values.value.size(); ++cell) {
        CHECK(values.low[cell] <= values.value[cell]);
        CHECK(values.value[cell] <= values.high[cell]);
        CHECK(values.short_term[cell] >= 0);
    }
}

} // namespace

TEST_CASE("more charged never lowers a figure of the bottles, and low, value and high keep their order") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> factor(0.2, 3);
    for (const char* name : {"bromine_poured", "bromine_made"}) {
        const WeighedRoute route = small_route(name);
        Inputs inputs = route.flat().nominal();
        const HazardMap& map = route.map();
        for (int run = 0; run < 200; ++run) {
            inputs = route.flat().nominal();
            // The isolated yield is a share of theory, so the reactants stay and the rest varies.
            for (std::size_t slot = 1; slot < inputs.charged.size(); ++slot)
                inputs.charged[slot] *= factor(random);
            const Evaluation before = route.flat().evaluate(inputs);
            const HazardValues low = map.evaluate(before);
            check_order_of_ends(low);
            std::uniform_int_distribution<std::size_t> any(1, inputs.charged.size() - 1);
            Evaluation after = before;
            after.in[any(random)] *= 1.25; // one more gram in a bottle, all else as it was
            const HazardValues high = map.evaluate(after);
            for (std::size_t e = 0; e < schemes().score.endpoints.size(); ++e) {
                const std::size_t cell = cell_index(e, HazardPlace::bottle);
                CHECK(high.value[cell] >= low.value[cell]);
                CHECK(high.high[cell] >= low.high[cell]);
            }
            CHECK(score(schemes().score, high).value >= score(schemes().score, low).value);
        }
    }
}

TEST_CASE("scaling a route changes no hazard figure") {
    for (const char* name : {"bromine_poured", "bromine_made"}) {
        const WeighedRoute route = small_route(name);
        for (const double scale : {1e-3, 0.37, 250.0}) {
            Inputs inputs = route.flat().nominal();
            for (double& charged : inputs.charged)
                charged *= scale;
            const HazardValues values = route.map().evaluate(route.flat().evaluate(inputs));
            for (std::size_t cell = 0; cell < values.value.size(); ++cell) {
                CHECK(values.value[cell] == Approx(route.values().value[cell]).epsilon(1e-9));
                if (std::isfinite(route.values().high[cell]))
                    CHECK(values.high[cell] == Approx(route.values().high[cell]).epsilon(1e-9));
                else
                    CHECK(std::isinf(values.high[cell]));
            }
        }
    }
}

TEST_CASE("water poured into the waste does not improve a route") {
    const WeighedRoute plain = small_route("bromine_poured");
    const WeighedRoute drowned = small_route(
        "bromine_poured", {{"{\"material\": \"test promoter\"",
                            "{\"material\": \"water\", \"amount\": \"500 g\", \"role\": \"drown-out\"}, "
                            "{\"material\": \"test promoter\""}});
    for (std::size_t cell = 0; cell < plain.values().value.size(); ++cell)
        CHECK(drowned.values().value[cell] == Approx(plain.values().value[cell]).epsilon(1e-12));
}
