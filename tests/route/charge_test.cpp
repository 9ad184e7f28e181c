// SPDX-License-Identifier: MIT
#include "route/charge.hpp"

#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

Charge charge_of(std::string_view material, std::string_view amount, std::string_view of = {}) {
    Charge charge;
    charge.material = Catalogue::embedded().find_material(material);
    REQUIRE(charge.material != nullptr);
    charge.amount = parse_written(amount);
    if (!of.empty()) charge.of = Catalogue::embedded().find_substance(of);
    return charge;
}

double grams(std::string_view material, std::string_view amount, double reference = none,
             std::string_view of = {}) {
    return grams_of(charge_of(material, amount, of), reference);
}

std::string refused(std::string_view material, std::string_view amount, double reference = none) {
    try {
        grams(material, amount, reference);
    } catch (const ChargeError& error) {
        return error.message;
    }
    return "";
}

} // namespace

TEST_CASE("masses are taken as written") {
    CHECK(grams("acetanilide", "1.352 g") == 1.352);
    CHECK(grams("acetanilide", "250 mg") == Approx(0.25));
    CHECK(grams("acetanilide", "2 kg") == Approx(2000));
    CHECK(grams("water", "3 x 5 g") == Approx(15));
}

TEST_CASE("volumes go through the density of the material") {
    CHECK(grams("hydrobromic acid 48 %", "10 mL") == Approx(14.9)); // 1.49 g/mL
    CHECK(grams("hydrobromic acid 48 %", "0.01 L") == Approx(14.9));
    CHECK(grams("hydrobromic acid 48 %", "2 x 5 mL") == Approx(14.9));
    CHECK(refused("hydrogen bromide", "10 mL").find("no density for \"hydrogen bromide\"") !=
          std::string::npos);
}

TEST_CASE("moles go through the mass fraction of what they count") {
    CHECK(grams("acetanilide", "10 mmol") == Approx(1.35166)); // C8H9NO 135.166
    CHECK(grams("hydrobromic acid 48 %", "12.5 mmol") == Approx(0.0125 * 80.912 / 0.48));
    CHECK(grams("hydrobromic acid 48 %", "1 mol", none, "water") == Approx(18.015 / 0.52));
    CHECK(grams("hydrogen peroxide 30 %", "13000 umol") == Approx(0.013 * 34.014 / 0.30));
}

TEST_CASE("equivalents and mol % need the amount of the reference") {
    CHECK(grams("bromine", "1.06 eq", 0.010) == Approx(0.0106 * 159.808));
    CHECK(grams("bromine", "106 mol %", 0.010) == Approx(0.0106 * 159.808));
    CHECK(refused("bromine", "1.06 eq").find("need a reference substance") != std::string::npos);
}

TEST_CASE("a mixture of several actives must say what its moles count") {
    CHECK(refused("household bleach 5.25 %", "10 mmol").find("say in \"of\"") != std::string::npos);
    CHECK(grams("household bleach 5.25 %", "10 mmol", none, "sodium hypochlorite") ==
          Approx(0.010 * 74.439 / 0.0525).epsilon(1e-3));
}

TEST_CASE("a boiling range has no moles") {
    CHECK(refused("petroleum ether", "10 mmol").find("no formula and hence no moles") != std::string::npos);
    CHECK(refused("petroleum ether", "2 eq", 0.01).find("no formula") != std::string::npos);
    CHECK(grams("petroleum ether", "10 g") == 10);
}

TEST_CASE("a unit of something else is no amount") {
    CHECK(refused("water", "10 min").find("\"min\" is no unit of an amount") != std::string::npos);
    CHECK(refused("water", "10 %") != "");
}

TEST_CASE("the reference is all of it that is charged in absolute units, in any bottle") {
    const Built built(
        route("4-bromoacetanilide",
              {step("4-bromoacetanilide", "hydrogen bromide",
                    "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water",
                    {stage("reaction",
                           {charge("acetanilide", "0.5 eq", "substrate"),
                            charge("hydrobromic acid 48 %", "10 mmol", "reagent"),
                            charge("hydrogen bromide 33 % in acetic acid", "10 mmol", "reagent"),
                            charge("hydrogen bromide", "0.1 eq", "reagent"),
                            charge("hydrogen peroxide 30 %", "1 eq", "oxidant")},
                           {reaction("hydrogen peroxide + 2 hydrogen bromide -> bromine + 2 water"),
                            reaction("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide")})})}));
    CHECK(reference_moles(built.route.steps[0]) == Approx(0.020));
    CHECK(built.in("acetanilide") == Approx(0.010 * 135.166));
}
