// SPDX-License-Identifier: MIT
#include "base/fraction.hpp"
#include "base/known.hpp"
#include "base/quantity.hpp"

#include <doctest/doctest.h>

#include <limits>
#include <string>
#include <type_traits>

using namespace routeweigh;
using doctest::Approx;

TEST_CASE("a quantity is read back in any unit of its dimension") {
    CHECK((2.5 * unit::g).in(unit::mg) == 2500.0);
    CHECK((2.5 * unit::L).in(unit::mL) == 2500.0);
    CHECK((90 * unit::min).in(unit::h) == 1.5);
    CHECK((1 * unit::kWh).in(unit::kJ) == 3600.0);
    CHECK((0.25 * unit::mol).in(unit::mmol) == 250.0);
}

TEST_CASE("dividing and multiplying quantities makes the dimension that a chemist expects") {
    static_assert(std::is_same_v<decltype(unit::g / unit::mol), MolarMass>);
    static_assert(std::is_same_v<decltype(unit::g_per_mL * unit::mL), Mass>);
    static_assert(std::is_same_v<decltype(unit::W * unit::s), Energy>);
    static_assert(std::is_same_v<decltype(unit::g / unit::kg), double>);
    // 10 mL of ethanol at 0.7893 g/mL, 46.069 g/mol.
    const Mass mass = 10 * unit::mL * (0.7893 * unit::g_per_mL);
    CHECK(mass.in(unit::g) == Approx(7.893));
    CHECK((mass / (46.069 * unit::g_per_mol)).in(unit::mmol) == Approx(171.330).epsilon(1e-5));
    CHECK((300 * unit::W * (10 * unit::min)).in(unit::kJ) == Approx(180.0));
}

TEST_CASE("quantities of one dimension add and compare") {
    Mass total = 1.5 * unit::g;
    total += 500 * unit::mg;
    CHECK(total == 2 * unit::g);
    CHECK(total > 1999 * unit::mg);
    CHECK(-total < Mass{});
    total -= 1 * unit::g;
    CHECK(total.in(unit::g) == 1.0);
}

TEST_CASE("a temperature is a point that compares across scales") {
    CHECK(Temperature::from_kelvin(373.15).celsius() == Approx(100.0));
    CHECK(Temperature::from_celsius(0) > Temperature::from_kelvin(273));
}

TEST_CASE("a fraction holds nothing outside 0 to 1") {
    CHECK(Yield::of_percent(80).value() == Approx(0.8));
    CHECK(Conversion(0.95).rest() == Approx(0.05));
    CHECK((MassFraction(0.48) * (2 * unit::g)).in(unit::g) == Approx(0.96));
    CHECK_THROWS_AS(Recovery(1.0001), std::domain_error);
    CHECK_THROWS_AS(Recovery(-0.1), std::domain_error);
    const double no_number = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(Recovery{no_number}, std::domain_error);
}

TEST_CASE("a missing value says why and is never read as zero") {
    const auto missing = Known<double>::missing("no density in the catalogue");
    CHECK_FALSE(missing.has_value());
    CHECK_THROWS_AS(missing.value(), std::logic_error);
    CHECK(missing.reason() == "no density in the catalogue");

    const auto length = [](double x) { return std::to_string(x).size(); };
    CHECK(missing.map(length).reason() == "no density in the catalogue");
    const Known<double> known = 1.5;
    CHECK(*known.map([](double x) { return 2 * x; }) == 3.0);
}
