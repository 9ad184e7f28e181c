// SPDX-License-Identifier: MIT
#include "base/number.hpp"
#include "base/quantity_text.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

using namespace routeweigh;
using doctest::Approx;

namespace {

std::string message_of(const std::string& text) {
    try {
        parse_written(text);
    } catch (const QuantityError& error) {
        return error.what();
    }
    return "";
}

bool contains(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("written quantities are read as they stand") {
    struct Row {
        const char* text;
        double value;
        double spread; // -1: none
        const char* unit;
        int repeat;
        int significant;
    };
    const std::vector<Row> rows = {
        {"2.50 g", 2.5, -1, "g", 1, 3},
        {"2.50g", 2.5, -1, "g", 1, 3},
        {"  2.50   g ", 2.5, -1, "g", 1, 3},
        {"2.50 +/- 0.01 g", 2.5, 0.01, "g", 1, 3},
        {"2.50 \u00b1 0.01 g", 2.5, 0.01, "g", 1, 3},
        {"2.50\u00b10.01 g", 2.5, 0.01, "g", 1, 3},
        {"78 \u00b0C", 78, -1, "degC", 1, 2},
        {"78 degC", 78, -1, "degC", 1, 2},
        {"-10 degC", -10, -1, "degC", 1, 2},
        {"3 x 5 mL", 5, -1, "mL", 3, 1},
        {"3x5 mL", 5, -1, "mL", 3, 1},
        {"3 \u00d7 5.0 ml", 5, -1, "mL", 3, 2},
        {"2 x 5.0 +/- 0.1 mL", 5, 0.1, "mL", 2, 2},
        {"85 %", 85, -1, "%", 1, 2},
        {"85%", 85, -1, "%", 1, 2},
        {"1.2 eq", 1.2, -1, "eq", 1, 2},
        {"10 mol %", 10, -1, "mol %", 1, 2},
        {"10 mol%", 10, -1, "mol %", 1, 2},
        {"0.5 g/g", 0.5, -1, "g/g", 1, 1},
        {"300 W", 300, -1, "W", 1, 3},
        {"2.5e-3 mol", 0.0025, -1, "mol", 1, 2},
        {"2.5E+3 mg", 2500, -1, "mg", 1, 2},
        {"0.050 g", 0.05, -1, "g", 1, 2},
        {"100 mL", 100, -1, "mL", 1, 3},
        {"1 \u00b5L", 1, -1, "uL", 1, 1},
        {"1 \u03bcmol", 1, -1, "umol", 1, 1},
        {"48 % w/w", 48, -1, "% w/w", 1, 2},
        {"48 wt %", 48, -1, "% w/w", 1, 2},
        {"5 % w/v", 5, -1, "% w/v", 1, 1},
        {"95 % v/v", 95, -1, "% v/v", 1, 2},
        {"2 h", 2, -1, "h", 1, 1},
        {"6 M", 6, -1, "mol/L", 1, 1},
        {"0.85", 0.85, -1, "", 1, 2},
        {".5 g", 0.5, -1, "g", 1, 1},
        {"5. g", 5, -1, "g", 1, 1},
        {"+5 g", 5, -1, "g", 1, 1},
        {"0 g", 0, -1, "g", 1, 1},
        {"2.50\u00a0g", 2.5, -1, "g", 1, 3}, // spaces and minus of word processors
        {"2.50\u2009\u00b1\u20090.01\u202fg", 2.5, 0.01, "g", 1, 3},
        {"\u221210 \u00b0C", -10, -1, "degC", 1, 2},
    };
    for (const Row& row : rows) {
        CAPTURE(row.text);
        const WrittenQuantity read = parse_written(row.text);
        CHECK(read.value == Approx(row.value).epsilon(1e-15));
        CHECK(read.spread.value_or(-1) == Approx(row.spread));
        CHECK(read.unit == row.unit);
        CHECK(read.repeat == row.repeat);
        CHECK(read.significant == row.significant);
    }
}

TEST_CASE("what is no quantity is refused with advice") {
    CHECK(contains(message_of("2,50 g"), "decimal point"));
    CHECK(contains(message_of("1,000 mL"), "decimal point"));
    CHECK(contains(message_of("1 000 mL"), "thousands"));
    CHECK(contains(message_of("nan g"), "finite"));
    CHECK(contains(message_of("inf"), "finite"));
    CHECK(contains(message_of("-inf g"), "finite"));
    CHECK(contains(message_of("1e400 g"), "too large"));
    CHECK(contains(message_of("-1e400 g"), "too large"));
    CHECK(contains(message_of("1e-400 g"), "too small"));
    CHECK(contains(message_of("2e15 g"), "too large"));
    CHECK(contains(message_of("-5e-16 g"), "too small"));
    CHECK(contains(message_of("3 x 1e300 g"), "too large"));
    CHECK(contains(message_of("1 +/- 1e16 g"), "too large"));
    CHECK(contains(message_of("5-10 g"), "range"));
    CHECK(contains(message_of("5 to 10 g"), "range"));
    CHECK(contains(message_of("5 g +/- 1 %"), "before"));
    CHECK(contains(message_of("5 +/- -1 g"), "spread"));
    CHECK(contains(message_of("2.5 x 5 mL"), "portions"));
    CHECK(contains(message_of("0 x 5 mL"), "portions"));
    CHECK(contains(message_of(""), "empty"));
    CHECK(contains(message_of("   "), "empty"));
    CHECK(contains(message_of("about 5 g"), "number"));
    CHECK(contains(message_of("~5 g"), "number"));
    CHECK(contains(message_of("g"), "number"));
    CHECK(contains(message_of("."), "number"));
    CHECK(contains(message_of("3 x"), "number"));
    CHECK(contains(message_of("5 furlong"), "unknown unit"));
    CHECK(contains(message_of("5 g mL"), "unknown unit"));
    CHECK(contains(message_of("5 %%"), "unknown unit"));
}

TEST_CASE("an unknown unit brings the nearest known one") {
    const auto offered = [](const char* text) {
        try {
            parse_written(text);
        } catch (const QuantityError& error) {
            return error.nearest;
        }
        return std::string("read");
    };
    CHECK(offered("5 mll") == "mL");
    CHECK(offered("5 KG") == "kg");
    CHECK(offered("5 mmoll") == "mmol");
    CHECK(offered("5 Mins") == "min");
    CHECK(offered("5 furlong") == "");
    // A likeness of letters would offer a tenth or a thousandfold here.
    CHECK(offered("5 cc") == "mL");
    CHECK(offered("5 mcg") == "ug");
    CHECK(offered("5 lb") == "");
    CHECK(offered("5 m") == "");
    // Words of the bench.
    CHECK(offered("5 ML") == "mL");
    CHECK(offered("2.50 grams") == "g");
    CHECK(offered("15 minutes") == "min");
    CHECK(offered("2 hrs") == "h");
    CHECK(offered("0.1 moles") == "mol");
    CHECK(offered("5 cm\u00b3") == "mL");
    CHECK(offered("60 Celsius") == "degC");
    CHECK(offered("60 \u02daC") ==
          "degC"); // the ring of an accent, and that of functions, look like a degree sign
    CHECK(offered("60 \u2218C") == "degC");
}

TEST_CASE("a quantity is taken with all its portions and only as what it is") {
    CHECK(as_mass(parse_written("250 mg")).in(unit::g) == Approx(0.25));
    CHECK(as_volume(parse_written("3 x 5 mL")).in(unit::mL) == 15.0);
    CHECK(as_amount(parse_written("25 mmol")).in(unit::mol) == Approx(0.025));
    CHECK(as_duration(parse_written("1.5 h")).in(unit::min) == Approx(90.0));
    CHECK(as_energy(parse_written("0.1 kWh")).in(unit::kJ) == Approx(360.0));
    CHECK(as_power(parse_written("0.3 kW")).in(unit::W) == Approx(300.0));
    CHECK(as_temperature(parse_written("300 K")).celsius() == Approx(26.85));
    CHECK(as_temperature(parse_written("-78 \u00b0C")).celsius() == -78.0);
    CHECK(as_fraction(parse_written("85 %")) == Approx(0.85));
    CHECK(as_mass_ratio(parse_written("0.5 g/g")) == 0.5);

    CHECK_THROWS_AS(as_mass(parse_written("5 mL")), QuantityError);
    CHECK_THROWS_AS(as_mass(parse_written("5")), QuantityError);
    CHECK_THROWS_AS(as_mass(parse_written("-5 g")), QuantityError);
    CHECK_THROWS_AS(as_volume(parse_written("5 g")), QuantityError);
    CHECK_THROWS_AS(as_duration(parse_written("5 mmol")), QuantityError);
    CHECK_THROWS_AS(as_temperature(parse_written("-300 degC")), QuantityError);
    CHECK_THROWS_AS(as_temperature(parse_written("3 x 20 degC")), QuantityError);
    CHECK_THROWS_AS(as_mass_ratio(parse_written("0.5 g/mL")), QuantityError);
}

TEST_CASE("a fraction is never guessed") {
    CHECK_THROWS_AS(as_fraction(parse_written("0.85")), QuantityError);
    CHECK_THROWS_AS(as_fraction(parse_written("85")), QuantityError);
    CHECK_THROWS_AS(as_fraction(parse_written("101 %")), QuantityError);
    CHECK_THROWS_AS(as_fraction(parse_written("-1 %")), QuantityError);
    CHECK_THROWS_AS(as_fraction(parse_written("85 % w/w")), QuantityError);
    CHECK_THROWS_AS(as_fraction(parse_written("85 % w/v")), QuantityError);
    CHECK_THROWS_AS(as_fraction(parse_written("85 % v/v")), QuantityError);
    CHECK_THROWS_AS(as_fraction(parse_written("10 mol %")), QuantityError);
    CHECK_THROWS_AS(as_fraction(parse_written("2 x 40 %")), QuantityError);
}

TEST_CASE("decimal numbers are rounded as the compiler rounds them") {
    const auto value = [](const char* text) { return read_number(text)->value; };
    CHECK(value("0.1") == 0.1);
    CHECK(value("179.769313486231570e306") == 179.769313486231570e306);
    CHECK(value("4.9406564584124654e-324") == 4.9406564584124654e-324);
    CHECK(value("2.2250738585072014e-308") == 2.2250738585072014e-308);
    CHECK(value("123456789012345678901234567890") == 123456789012345678901234567890.0);
    CHECK(value("9007199254740993") == 9007199254740992.0);
    CHECK(value("0.000000000000000000000000000000123") == 0.000000000000000000000000000000123);
    CHECK(std::isinf(value("1e400")));
    CHECK(value("1e-400") == 0.0);
    CHECK(std::isinf(value("1e99999999999999999999")));
    CHECK(read_number("1e")->length == 1);
    CHECK(read_number("2.5.1")->length == 3);
    CHECK_FALSE(read_number("e5"));
    CHECK_FALSE(read_number("-"));
    CHECK_FALSE(read_number("infinity"));
    CHECK_FALSE(read_number("0x10")->length > 1);
}
