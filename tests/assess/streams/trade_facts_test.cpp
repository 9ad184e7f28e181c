// SPDX-License-Identifier: MIT
// Facts of the trade, held as checks. Common practice, no source, unless said otherwise.
#include "stream_case.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

// Common practice, no source: what is rich in ethanol goes to the flammable container, not to the aqueous
// one.
TEST_CASE("a filtrate rich in ethanol goes to the flammable container") {
    CHECK(decide(spirit(50), us_rules()).kind == ContainerKind::flammable);
    CHECK(decide(spirit(50), eu_rules()).kind == ContainerKind::flammable);
}

// Common practice, no source.
TEST_CASE("solid product and wet filter paper go to solids") {
    CHECK(decide(grams({{"4-bromoacetanilide", 2}}), us_rules(), StreamKind::residue).kind ==
          ContainerKind::solids);
    CHECK(
        decide(grams({{"4-bromoacetanilide", 2}, {"ethanol", 0.5}}), us_rules(), StreamKind::residue).kind ==
        ContainerKind::solids);
    for (const StreamRules* rules : {&us_rules(), &eu_rules()}) {
        REQUIRE(rules->local.thing("filter paper") != nullptr);
        CHECK(rules->local.thing("filter paper")->kind == ContainerKind::solids);
        CHECK(rules->local.thing("Filter  paper")->from.standing == Standing::common_practice);
        CHECK(rules->local.thing("solid product")->kind == ContainerKind::solids);
        CHECK(rules->local.thing("needle")->kind == ContainerKind::sharps);
        CHECK(rules->local.thing("unicorn") == nullptr);
    }
}

// Common practice, no source: acid spills are taken up with saturated sodium hydrogencarbonate.
TEST_CASE("an acid spill takes so much saturated hydrogencarbonate") {
    const QuenchTable& table = us_rules().quench;
    CHECK(table.spill_from.standing == Standing::common_practice);
    const Material* saturated = catalogue().find_material(table.spill_material);
    REQUIRE(saturated != nullptr);
    CHECK(saturated->id == "sodium-bicarbonate-saturated");
    // About 1.1 mol/L (remembered): 100 mmol acid take about 90 mL.
    CHECK(spill_bicarbonate(0.1, table, catalogue()) == doctest::Approx(91).epsilon(0.1));
}

// Common practice, no source: two equivalents of hydrogen bromide go in for each equivalent of an alkene that
// takes up bromine made by peroxide; alkene and dibromide are one to one.
TEST_CASE("bromine made by peroxide: two hydrogen bromide for one alkene, one dibromide out") {
    using namespace routeweigh::test;
    const auto made = [](const char* acid) {
        return Built(
                   route(
                       "trans-1,2-dibromocyclohexane",
                       {step("trans-1,2-dibromocyclohexane", "cyclohexene",
                             "cyclohexene + 2 hydrogen bromide + hydrogen peroxide -> "
                             "trans-1,2-dibromocyclohexane + 2 "
                             "water",
                             {stage("reaction",
                                    {charge("cyclohexene", "10 mmol", "substrate"),
                                     charge("hydrobromic acid 48 %", acid, "reagent"),
                                     charge("hydrogen peroxide 30 %", "12 mmol", "oxidant")},
                                    {reaction("hydrogen peroxide + 2 hydrogen bromide -> bromine + 2 water"),
                                     reaction("cyclohexene + bromine -> trans-1,2-dibromocyclohexane")})},
                             "\"dissolved\": [\"hydrogen bromide\"]")}))
            .step()
            .made;
    };
    CHECK(made("20 mmol") == doctest::Approx(0.010));
    CHECK(made("10 mmol") == doctest::Approx(0.005)); // one equivalent is half of it
    CHECK(made("2 eq") == doctest::Approx(0.010));
}

// Common practice, no source: a student keeps the solid until all data are in.
TEST_CASE("a product sample is kept until all data are in") {
    for (const StreamRules* rules : {&us_rules(), &eu_rules()}) {
        const Thing* sample = rules->local.thing("product sample");
        REQUIRE(sample != nullptr);
        CHECK(sample->kind == ContainerKind::product);
        CHECK(holds(sample->note, "until all data are in"));
        CHECK(holds(rules->local.container(ContainerKind::product)->takes, "until all data are in"));
    }
}
