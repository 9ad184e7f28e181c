// SPDX-License-Identifier: MIT
// How documents print numbers. Rounding to significant digits as taught; no source needed.
#include "documents/number.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace routeweigh::documents;

TEST_CASE("a negative number has a true minus, and nothing has none") {
    CHECK(fixed(-3.51, 1) == "\u22123.5");
    CHECK(fixed(-0.04, 1) == "0.0");
    CHECK(fixed(0.04, 1) == "0.0");
    CHECK(difference_text(2.46, 1) == "+2.5");
    CHECK(difference_text(-2.46, 1) == "\u22122.5");
    CHECK(difference_text(0.01, 1) == "0.0");
}

TEST_CASE("three significant digits, no more and no less") {
    CHECK(digits(1692.4) == "1690");
    CHECK(digits(0.98917) == "0.989");
    CHECK(digits(9.996) == "10.0");
    CHECK(digits(0.00012345) == "0.000123");
    CHECK(digits(0.0) == "0");
    CHECK(digits(1.234e-5) == "1.23 \u00D7 10\u207B\u2075");
    CHECK(digits(2.5e7, 2) == "2.5 \u00D7 10\u2077");
    CHECK(digits(-41.26) == "\u221241.3");
}

TEST_CASE("a figure keeps its decimals where they say something") {
    CHECK(figure_text(53.363, 1) == "53.4");
    CHECK(figure_text(0.0432, 1) == "0.043");
    CHECK(figure_text(0.00432, 1) == "< 0.01");
    CHECK(figure_text(5.5e-6, 3) == "< 0.0001");
    CHECK(figure_text(185.65, 3) == "186");
    CHECK(figure_text(134.7, 1) == "134.7");
    CHECK(figure_text(2488.9, 1) == "2490");
    CHECK(figure_text(0.0, 2) == "0");
}

TEST_CASE("what is not finite never prints as a number") {
    CHECK(fixed(std::numeric_limits<double>::quiet_NaN(), 1).find_first_of("0123456789") ==
          std::string::npos);
    CHECK(digits(std::numeric_limits<double>::infinity()).find_first_of("0123456789") == std::string::npos);
    CHECK_FALSE(number_cell(std::numeric_limits<double>::quiet_NaN(), 1).number.has_value());
}

TEST_CASE("a difference is no finer than the figures it is taken from") {
    CHECK(difference_text(178.2, 73.04, 3) == "+105"); // "178" and "73.0" are printed
    CHECK(difference_text(185.65, 53.1, 3) == "+133");
    CHECK(difference_text(41.27, 53.36, 1) == "\u221212.1");
    CHECK(difference_text(0.0, 0.989, 3) == "\u22120.989");
}
