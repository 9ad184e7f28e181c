// SPDX-License-Identifier: MIT
#include "base/problem.hpp"
#include "base/text.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace routeweigh;

TEST_CASE("significant digits keep their zeros and round as people round") {
    CHECK(significant(2.5, 3) == "2.50");
    CHECK(significant(1690.4, 3) == "1690");
    CHECK(significant(1695, 3) == "1700"); // 1695 is a tie and goes away from zero
    CHECK(significant(72.649, 3) == "72.6");
    CHECK(significant(9.996, 3) == "10.0");
    CHECK(significant(999.6, 3) == "1000");
    CHECK(significant(0.00012345, 2) == "0.00012");
    CHECK(significant(-0.05, 2) == "-0.050");
    CHECK(significant(0, 3) == "0.00");
    CHECK(significant(1.2e-9, 3) == "1.20e-09");
    CHECK(significant(3.25e20, 2) == "3.2e+20");
    CHECK(significant(123456, 6) == "123456");
    CHECK(significant(std::numeric_limits<double>::infinity(), 3) == "inf");
}

TEST_CASE("names are compared without case and spacing") {
    CHECK(fold("  Acetic\t  Acid ") == "acetic acid");
    CHECK(fold("") == "");
    CHECK(fold("\u00c4ther") == "\u00c4ther"); // letters beyond ASCII stay as they are
    CHECK(trim(" \n a b\t") == "a b");
    CHECK(join({"H", "C"}, ", ") == "H, C");
    CHECK(join({}, ", ").empty());
}

TEST_CASE("the nearest spelling forgives a few letters and no more") {
    const std::vector<std::string> names = {"ethanol", "methanol", "ethanol 95 %", "acetanilide", "bromine"};
    CHECK(nearest("etanol 95 %", names) == "ethanol 95 %");
    CHECK(nearest("Etanol", names) == "ethanol");
    CHECK(nearest("brmoine", names) == "bromine"); // neighbours swapped count once
    CHECK(nearest("acetanilid", names) == "acetanilide");
    CHECK(nearest("mehtanol", names) == "methanol");
    CHECK(nearest("toluene", names) == "");
    CHECK(nearest("", names) == "");
    CHECK(nearest("x", {"g"}) == "");
}

TEST_CASE("a problem is one line with file, line, pointer, message and nearest spelling") {
    Problem problem;
    problem.message = "no material \"etanol 95 %\"";
    problem.nearest = "ethanol 95 %";
    problem.place = {"routes/x.json", "/steps/0/charges/2/material", 31, 21, "", 0};
    CHECK(format(problem) == "routes/x.json:31 /steps/0/charges/2/material: no material \"etanol 95 %\"; "
                             "nearest: \"ethanol 95 %\"");

    problem.severity = Severity::warning;
    problem.nearest.clear();
    problem.second = Place{"routes/y.json", "/id", 2, 9, "", 0};
    CHECK(format(problem) ==
          "routes/x.json:31 /steps/0/charges/2/material: warning: no material \"etanol 95 %\"; "
          "the other place: routes/y.json:2 /id");

    Problem bare;
    bare.message = "no route file";
    CHECK(format(bare) == "no route file");
    CHECK(std::string(InputError({problem, bare}).what()) == format(problem) + "\nno route file");
}

TEST_CASE("the caret stands under the place, also behind letters of several bytes") {
    Place place;
    place.excerpt = "\t\"caf\u00e9\": 1";
    place.excerpt_column = 11; // the 1; the accented letter has two bytes
    CHECK(format_excerpt(place) == "\t\"caf\u00e9\": 1\n\t        ^");
    CHECK(format_excerpt(Place{}).empty());
}

TEST_CASE("names in a sentence, and what is said of an unknown one") {
    CHECK(listed({}).empty());
    CHECK(listed({"A1"}) == "A1");
    CHECK(listed({"A1", "A3"}) == "A1 and A3");
    CHECK(listed({"A1", "A2", "A3"}) == "A1, A2 and A3");
    CHECK(capitalised("ethanol") == "Ethanol");
    CHECK(capitalised("4-bromoacetanilide") == "4-bromoacetanilide");
    CHECK(no_such("format", "htm", {"terminal", "html"}) ==
          "no format is called \"htm\"; nearest: \"html\"; there are: terminal, html");
    CHECK(no_such("step of A3", "xyzzy", {"bromination"}) ==
          "no step of A3 is called \"xyzzy\"; there are: bromination");
}
