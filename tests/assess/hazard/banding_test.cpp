// SPDX-License-Identifier: MIT
#include "assess/hazard/statement.hpp"
#include "hazard_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

// The categories stand beside the codes, for the published lists name codes only.
std::string band_of(const Banding& banding, const std::vector<GhsEntry>& entries) {
    const Banding::Match match = banding.worst(entries);
    return match.row == nullptr ? "" : banding.bands[static_cast<std::size_t>(match.row->band)].letter;
}

} // namespace

// Derived by applying the remembered rows of NIOSH 2019-132 to published statements; no published example for
// a named substance was found. They test the look-up, not the table.
TEST_CASE("the bands of four solutions and liquids follow from their statements") {
    const Banding& niosh = schemes().bandings[0];
    REQUIRE(niosh.id == "niosh_2019_132");
    CHECK(band_of(niosh, {entry("Acute Tox.", "4", "H302"), entry("Acute Tox.", "4", "H332"),
                          entry("Eye Dam.", "1", "H318")}) == "E"); // hydrogen peroxide 30 %
    CHECK(band_of(niosh, {entry("Acute Tox.", "3", "H331"), entry("Skin Corr.", "1A", "H314")}) ==
          "E"); // nitric acid 30 %
    CHECK(band_of(niosh, {entry("Acute Tox.", "3", "H301"), entry("Acute Tox.", "3", "H311"),
                          entry("Acute Tox.", "3", "H331"), entry("Skin Corr.", "1B", "H314"),
                          entry("Skin Sens.", "1", "H317"), entry("STOT SE", "3", "H335"),
                          entry("Muta.", "2", "H341"), entry("Carc.", "1B", "H350")}) ==
          "E"); // formaldehyde solution, from 25 %
    CHECK(band_of(niosh, {entry("Flam. Liq.", "1", "H224"), entry("Carc.", "2", "H351"),
                          entry("Eye Irrit.", "2", "H319"), entry("STOT SE", "3", "H335")}) ==
          "D"); // acetaldehyde
}

TEST_CASE("each statement of those examples leads to the band of its endpoint") {
    const Banding& niosh = schemes().bandings[0];
    CHECK(band_of(niosh, {entry("Acute Tox.", "4", "H332")}) == "C");
    CHECK(band_of(niosh, {entry("Acute Tox.", "3", "H331")}) == "C");
    CHECK(band_of(niosh, {entry("Skin Sens.", "1", "H317")}) == "D");
    CHECK(band_of(niosh, {entry("Skin Sens.", "1B", "H317")}) == "C");
    CHECK(band_of(niosh, {entry("Muta.", "2", "H341")}) == "D");
    CHECK(band_of(niosh, {entry("Carc.", "2", "H351")}) == "D");
    CHECK(band_of(niosh, {entry("Acute Tox.", "2", "H330")}) == "D");
    CHECK(band_of(niosh, {entry("Acute Tox.", "1", "H330")}) == "E");
}

TEST_CASE("fire, water and narcosis lead to no tier 1 band") {
    const Banding& niosh = schemes().bandings[0];
    for (const char* statement : {"H225", "H271", "H304", "H335", "H336", "H362", "H400", "H410"})
        CHECK_MESSAGE(band_of(niosh, {entry("any", "1", statement)}).empty(), statement);
    CHECK(band_of(niosh, {}).empty());
}

TEST_CASE("a category that no row names takes the worst row of the statement") {
    const Banding& niosh = schemes().bandings[0];
    CHECK(band_of(niosh, {entry("Acute Tox.", "", "H330")}) == "E");
    CHECK(band_of(niosh, {entry("Skin Sens.", "", "H317")}) == "D");
    CHECK(band_of(niosh, {entry("Repr.", "1B", "H360FD")}) == "D");
    CHECK(band_of(niosh, {entry("Repr.", "", "H360FD")}) == "E");
}

TEST_CASE("the second banding moves the statements that it is known to move") {
    const Banding& hse = schemes().bandings[1];
    REQUIRE(hse.id == "hse_ilo");
    CHECK(band_of(hse, {entry("Eye Dam.", "1", "H318")}) == "C");
    CHECK(band_of(hse, {entry("STOT SE", "3", "H335")}) == "C");
    CHECK(band_of(hse, {entry("STOT SE", "2", "H371")}) == "B");
    CHECK(band_of(hse, {entry("Muta.", "2", "H341")}) == "E");
    CHECK(band_of(hse, {entry("Skin Irrit.", "2", "H315")}) == "A");
}

TEST_CASE("the lower edge is outside a band and the upper edge inside") {
    const Banding& niosh = schemes().bandings[0];
    const auto letter = [&](double concentration, bool particle) {
        return niosh.bands[static_cast<std::size_t>(niosh.band_holding(concentration, particle))].letter;
    };
    CHECK(letter(100.001, false) == "A");
    CHECK(letter(100.0, false) == "B");
    CHECK(letter(10.0, false) == "C");
    CHECK(letter(1.0, false) == "D");
    CHECK(letter(0.1, false) == "E");
    CHECK(letter(0.1001, false) == "D");
    CHECK(letter(10.001, true) == "A");
    CHECK(letter(0.01, true) == "E");
    CHECK(letter(1e-9, true) == "E");
}

TEST_CASE("what the last group without a range shares with its neighbour is held by the neighbour") {
    const Banding& hse = schemes().bandings[1];
    CHECK(hse.bands[static_cast<std::size_t>(hse.band_holding(0.005, true))].letter == "D");
    CHECK(hse.bands[static_cast<std::size_t>(hse.band_holding(5000, false))].letter == "A");
}

TEST_CASE("a statement is its number; letters behind it do not count") {
    CHECK(statement_number("H314") == 314);
    CHECK(statement_number("H360FD") == 360);
    CHECK(statement_number("H350i") == 350);
    CHECK(statement_number("EUH066") == 0);
    CHECK(statement_number("H31") == 0);
    CHECK(statement_number("") == 0);
}
