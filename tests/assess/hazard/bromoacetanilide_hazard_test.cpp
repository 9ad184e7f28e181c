// SPDX-License-Identifier: MIT
// The demand for air of the ten ways to 4-bromoacetanilide, on the shipped data.
#include "assess/hazard/rank_agreement.hpp"
#include "hazard_case.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <map>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

WeighedRoute bromoacetanilide(const std::string& id) {
    return {file("routes/4-bromoacetanilide/" + id + ".json"), Catalogue::embedded()};
}

// m3 of air per gram of product to exposure limits of every kind, by substance: the labelled part included,
// bands not.
std::map<std::string, double> air_to_limits(const WeighedRoute& route) {
    std::map<std::string, double> result;
    const HazardGrid grid = route.grid(); // keeps the cell alive
    for (const HazardContributor& part : grid.cell(endpoint("inhalation"), HazardPlace::bottle).contributors)
        if (part.basis == HazardBasis::limit || part.basis == HazardBasis::short_term_limit)
            result[part.substance->name] += part.amount + part.short_term;
    return result;
}

double sum(const std::map<std::string, double>& parts) {
    double total = 0;
    for (const auto& [name, amount] : parts)
        total += amount;
    return total;
}

} // namespace

// Reckoned from the grams of the route files and the limits of the catalogue; P = 0.8 x 10 mmol x 214.062
// = 1.7125 g.
//   A1: bromine 1.694 g / 0.6536 mg/m3 = 2591.8 m3, acetic acid 7.342 g / 24.561 mg/m3 = 298.9 m3; /P: 1513.4
//   + 174.6 A3: hydrogen peroxide 0.3 x 1.474 g / 1.3912 mg/m3 = 317.9 m3, hydrogen bromide (ceiling) 0.48
//   x 2.107 g / 6.6186
//       mg/m3 = 152.8 m3; /P: 185.6 + 89.2
// Ethanol (15 minutes) adds 3.7 and 5.6. The disulfite of the quench (5 mg/m3) comes on top: 0.1 g and 0.4 g,
// /P / 5 mg/m3 = 12 and 47 m3.
TEST_CASE("bromine poured asks for six times the air of bromine made by peroxide") {
    const auto poured = air_to_limits(bromoacetanilide("A1"));
    CHECK(poured.at("bromine") == Approx(1513.4).epsilon(1e-3));
    CHECK(poured.at("acetic acid") == Approx(174.6).epsilon(1e-3));
    CHECK(sum(poured) - poured.at("sodium metabisulfite") == Approx(1691.7).epsilon(1e-3));
    CHECK(poured.at("sodium metabisulfite") == Approx(12).epsilon(0.05));

    const auto made = air_to_limits(bromoacetanilide("A3"));
    CHECK_FALSE(made.contains("bromine"));
    CHECK(made.at("hydrogen peroxide") == Approx(185.6).epsilon(1e-3));
    CHECK(made.at("hydrogen bromide") == Approx(89.2).epsilon(1e-3));
    CHECK(sum(made) - made.at("sodium metabisulfite") == Approx(280.4).epsilon(1e-3));
    CHECK(made.at("sodium metabisulfite") == Approx(47).epsilon(0.05));
    CHECK(made.at("hydrogen peroxide") > 0.5 * sum(made));
}

TEST_CASE("free bromine is in the flask of every way that makes it, and in one bottle only") {
    for (const char* id : {"A1", "A3", "A6"}) {
        const HazardGrid grid = bromoacetanilide(id).grid();
        const auto grams = [&](HazardPlace place) {
            for (const HazardContributor& part : grid.cell(endpoint("aquatic_acute"), place).contributors)
                if (part.substance->name == "bromine") return part.grams;
            return 0.0;
        };
        CHECK((grams(HazardPlace::bottle) > 0) == (std::string(id) == "A1"));
        CHECK(grams(HazardPlace::flask) > 0.3);
    }
}

TEST_CASE("the ten ways have figures in every cell, and the two bandings can be set against each other") {
    std::vector<double> first, second;
    for (const char* id : {"A1", "A2", "A2b", "A3", "A3w", "A4", "A5", "A6", "A7a", "A7b"}) {
        const WeighedRoute route = bromoacetanilide(id);
        for (std::size_t cell = 0; cell < route.values().value.size(); ++cell) {
            CHECK(std::isfinite(route.values().value[cell]));
            CHECK(route.values().value[cell] >= 0);
            CHECK(route.values().value[cell] <= route.values().high[cell]);
        }
        first.push_back(score(schemes().score, route.values(0)).value);
        second.push_back(score(schemes().score, route.values(1)).value);
    }
    const auto agreement = kendall_tau_b(first, second);
    REQUIRE(agreement.has_value());
    CHECK(std::abs(*agreement) <= 1);
}
