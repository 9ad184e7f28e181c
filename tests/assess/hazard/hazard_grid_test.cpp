// SPDX-License-Identifier: MIT
#include "hazard_case.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

TEST_CASE("contributors of a cell add up to its figures, greatest first") {
    for (const char* name : {"bromine_poured", "bromine_made"}) {
        const WeighedRoute route = small_route(name);
        const HazardGrid grid = route.grid();
        REQUIRE(grid.cells.size() == schemes().score.cell_count());
        for (std::size_t index = 0; index < grid.cells.size(); ++index) {
            const HazardCell& cell = grid.cells[index];
            double amount = 0, short_term = 0, share = 0, lower = 0, unassessed = 0;
            for (std::size_t c = 0; c < cell.contributors.size(); ++c) {
                const HazardContributor& contributor = cell.contributors[c];
                amount += contributor.amount;
                short_term += contributor.short_term;
                share += contributor.share;
                if (contributor.lower_level) lower += contributor.grams;
                if (contributor.basis == HazardBasis::unassessed) unassessed += contributor.grams;
                if (c > 0) CHECK(contributor.amount <= cell.contributors[c - 1].amount);
                CHECK(contributor.grams > 0);
                CHECK(contributor.provenance.datum != "");
            }
            CHECK(amount == Approx(cell.value));
            CHECK(short_term == Approx(cell.short_term));
            CHECK(share == Approx(cell.value > 0 ? 1 : 0));
            CHECK(lower == Approx(cell.lower_level));
            CHECK(unassessed == Approx(cell.unassessed));
            CHECK(cell.value == route.values().value[index]);
        }
    }
}

TEST_CASE("a cell says what it rests on") {
    const WeighedRoute route = small_route("bromine_poured");
    const HazardGrid grid = route.grid();
    const HazardCell& air = grid.cell(endpoint("inhalation"), HazardPlace::bottle);
    REQUIRE(air.contributors.size() == 4);
    CHECK(air.contributors[0].substance->name == "bromine");
    CHECK(air.contributors[0].basis == HazardBasis::limit);
    CHECK(air.contributors[0].share == Approx(1427.740561146 / 2746.755110170));
    CHECK(air.contributors[1].substance->name == "acetanilide");
    CHECK(air.contributors[1].level == "C");
    // Bands: acetanilide and promoter; recalled: the classification of acetanilide alone.
    CHECK(air.share_on_bands == Approx((789.292354551 + 291.971484897) / 2746.755110170));
    CHECK(air.share_from_memory == Approx(789.292354551 / 2746.755110170));

    const HazardCell& water = grid.cell(endpoint("aquatic_acute"), HazardPlace::bottle);
    CHECK(water.share_on_assumed_m == Approx(1)); // bromine's M-factor is not known
    CHECK(grid.cell(endpoint("aquatic_chronic"), HazardPlace::bottle).share_on_assumed_m == 0.0);
}

TEST_CASE("grams at the lower level are shown and not scored") {
    const HazardCell cell =
        small_route("bromine_poured").grid().cell(endpoint("contact"), HazardPlace::flask);
    CHECK(cell.lower_level == Approx(1.25)); // the product, H315 and H319
    CHECK(cell.value == Approx(7.24509721482561));
}

TEST_CASE("unassessed grams are shown and leave a figure without an upper end") {
    const HazardGrid grid = small_route("bromine_made").grid();
    for (const char* id : {"inhalation", "aquatic_acute", "oral", "fire", "long_term"}) {
        const HazardCell& cell = grid.cell(endpoint(id), HazardPlace::bottle);
        CHECK_MESSAGE(cell.unassessed == Approx(0.0583942969793798), id);
        CHECK_MESSAGE(cell.high > cell.value, id);
    }
    CHECK(std::isinf(grid.cell(endpoint("inhalation"), HazardPlace::waste).high));
}

TEST_CASE("the product is one gram, shown and not scored") {
    const WeighedRoute route = small_route("bromine_poured");
    const HazardCell cell = route.grid().cell(endpoint("inhalation"), HazardPlace::product);
    CHECK(cell.value == Approx(1000)); // solid in band C
    CHECK(cell.high == Approx(10000));
    CHECK(weight_of(schemes().score, endpoint("inhalation"), HazardPlace::product) == 0.0);
    HazardValues without = route.values();
    for (std::size_t e = 0; e < schemes().score.endpoints.size(); ++e)
        without.value[cell_index(e, HazardPlace::product)] = 0.0;
    CHECK(score(schemes().score, without).value == score(schemes().score, route.values()).value);
}

TEST_CASE("hydrogen bromide that came in water is judged by the entry of its solution everywhere") {
    const HazardGrid grid = small_route("bromine_made").grid();
    for (const HazardPlace place : {HazardPlace::bottle, HazardPlace::flask, HazardPlace::waste}) {
        bool found = false;
        for (const HazardContributor& contributor : grid.cell(endpoint("contact"), place).contributors)
            if (contributor.substance->name == "hydrogen bromide") {
                found = true;
                CHECK(contributor.solution);
            }
        CHECK(found);
    }
}

TEST_CASE("what leaves as gas is judged by the entry of the pure substance") {
    // Not said to stay dissolved, the hydrogen bromide leaves.
    const WeighedRoute route =
        small_route("bromine_poured", {{"\"dissolved\": [\"hydrogen bromide\"]", "\"dissolved\": []"}});
    const HazardGrid grid = route.grid();
    int seen = 0;
    for (const HazardContributor& contributor :
         grid.cell(endpoint("contact"), HazardPlace::waste).contributors)
        if (contributor.substance->name == "hydrogen bromide") {
            ++seen;
            CHECK(!contributor.solution);
            CHECK(contributor.grams == Approx(0.472479935720));
        }
    CHECK(seen == 1);
}

// The first step makes 5 mmol of bromine, the second uses 10 mmol: two runs of the first for one of the
// second.
TEST_CASE("what a step makes for another was in no bottle, and a flask counts the step that holds most") {
    const HazardGrid grid = small_route("bromine_from_a_step").grid();
    const auto grams = [&](const char* id, HazardPlace place, const std::string& name) {
        double sum = 0;
        for (const HazardContributor& contributor : grid.cell(endpoint(id), place).contributors)
            if (contributor.substance->name == name) sum += contributor.grams;
        return sum;
    };
    CHECK(grams("contact", HazardPlace::bottle, "bromine") == 0.0);
    CHECK(grid.cell(endpoint("aquatic_acute"), HazardPlace::bottle).value == 0.0);
    // 10 mmol in both steps, not 20: 1.59808 g / 1.712496 g
    CHECK(grid.cell(endpoint("aquatic_acute"), HazardPlace::flask).value == Approx(0.933187581168));
    // 2 x 10 mmol charged in the first step, 10 mmol made in the second: 1.61824 g / 1.712496 g
    CHECK(grams("contact", HazardPlace::bottle, "hydrogen bromide") == Approx(0.944959871439));
    CHECK(grams("contact", HazardPlace::flask, "hydrogen bromide") == Approx(0.944959871439));
    CHECK(grams("contact", HazardPlace::waste, "hydrogen bromide") == Approx(0.472479935720));
}

TEST_CASE("rounding of the ledger is no substance and leaves no figure without an upper end") {
    const WeighedRoute route = small_route("bromine_made");
    const std::size_t cell = cell_index(endpoint("inhalation"), HazardPlace::bottle);
    Evaluation evaluation = route.evaluation();
    std::size_t catalyst = 0;
    while (route.flat().inflows()[catalyst].substance->name != "test catalyst")
        ++catalyst;
    evaluation.in[catalyst] = 1e-13;
    CHECK(std::isfinite(route.map().evaluate(evaluation).high[cell]));
    evaluation.in[catalyst] = 1e-6;
    CHECK(std::isinf(route.map().evaluate(evaluation).high[cell]));
}

TEST_CASE("evaluating again into the same values changes nothing") {
    const WeighedRoute route = small_route("bromine_made");
    HazardValues values;
    route.map().evaluate(route.evaluation(), values);
    const HazardValues first = values;
    route.map().evaluate(route.evaluation(), values);
    CHECK(values.value == first.value);
    CHECK(values.high == first.high);
}
