// SPDX-License-Identifier: MIT
#include "route/limiting_reagent.hpp"

#include "support/route_builder.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

std::vector<ReactantSupply> supplies(const Built& built) {
    return reactant_supplies(built.flat, 0, built.flat.nominal());
}

constexpr std::string_view bromate =
    "6 acetanilide + 4 potassium bromide + 2 potassium bromate + 3 sulfuric acid -> "
    "6 4-bromoacetanilide + 3 potassium sulfate + 6 water";

} // namespace

TEST_CASE("the reactant with the smallest amount over coefficient limits") {
    const Built built(one_pot(
        "4-bromoacetanilide", "acetanilide", bromate,
        {charge("acetanilide", "10 mmol", "substrate"), charge("potassium bromide", "8 mmol", "reagent"),
         charge("potassium bromate", "3 mmol", "oxidant"), charge("sulfuric acid", "6 mmol", "acid")},
        {reaction(bromate)}));
    const auto found = supplies(built);
    REQUIRE(found.size() == 4);
    CHECK(found[0].substance->name == "potassium bromate"); // 3/2 = 1.5 against 10/6, 8/4 and 6/3
    CHECK(found[0].moles == Approx(0.003));
    CHECK(found[0].coefficient == 2);
    CHECK(found[0].runs == Approx(0.0015));
    CHECK(found[1].substance->name == "acetanilide");
    CHECK(found[1].runs == Approx(0.010 / 6));
    // The product that forms says the same.
    CHECK(built.step().theory == Approx(6 * found[0].runs));
}

TEST_CASE("solvents, catalysts and later washes do not limit, and do not add to a supply") {
    const Built built(route(
        "4-bromoacetanilide",
        {step("4-bromoacetanilide", "acetanilide", bromination_equation,
              {stage("reaction",
                     {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "9 mmol", "reagent"),
                      charge("acetic acid", "1 mmol", "solvent"), charge("iodine", "0.01 mmol", "catalyst")},
                     {reaction(bromination_equation)}),
               stage("workup", {charge("bromine", "5 mmol", "quench")})})}));
    const auto found = supplies(built);
    REQUIRE(found.size() == 2);
    CHECK(found[0].substance->name == "bromine");
    CHECK(found[0].moles == Approx(0.009));
}

TEST_CASE("a portion added later, while product still forms, counts") {
    const Built built(route(
        "4-bromoacetanilide",
        {step("4-bromoacetanilide", "acetanilide", bromination_equation,
              {stage("reaction",
                     {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "6 mmol", "reagent")},
                     {reaction(bromination_equation)}),
               stage("reaction", {charge("bromine", "6 mmol", "reagent")},
                     {reaction(bromination_equation)})})}));
    const auto found = supplies(built);
    CHECK(found[0].substance->name == "acetanilide");
    CHECK(found[1].moles == Approx(0.012));
}

TEST_CASE("what is taken from the air never limits") {
    const Built built(
        one_pot("nitrogen dioxide", "nitric oxide", "2 nitric oxide + oxygen -> 2 nitrogen dioxide",
                {charge("nitric oxide", "4 mmol", "substrate"), charge("oxygen", "as used", "oxidant")},
                {reaction("2 nitric oxide + oxygen -> 2 nitrogen dioxide")}));
    const auto found = supplies(built);
    REQUIRE(found.size() == 1);
    CHECK(found[0].runs == Approx(0.002));
}
