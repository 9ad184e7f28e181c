// SPDX-License-Identifier: MIT
#include "chemistry/crystal_water.hpp"

#include "chemistry/catalogue.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>

using namespace routeweigh;

namespace {

int waters(const std::string& formula, const std::string& common = {}) {
    Substance substance;
    substance.formula = parse_formula(formula);
    substance.common_formula = common;
    return crystal_water(substance);
}

/// Molecules of water that stand by themselves in a structure.
int in_structure(const Substance& substance) {
    int found = 0;
    std::istringstream parts(substance.smiles);
    for (std::string part; std::getline(parts, part, '.');)
        found += part == "O" ? 1 : 0;
    return found;
}

} // namespace

TEST_CASE("crystal water stands behind the dot of a formula, whichever dot it is") {
    CHECK(waters("CuSO4.5H2O") == 5);
    CHECK(waters("CuSO4\xC2\xB7"
                 "5H2O") == 5);
    CHECK(waters("CuSO4\xE2\x8B\x85"
                 "5H2O") == 5);
    CHECK(waters("Na2CO3.10H2O") == 10);
    CHECK(waters("Cu(CH3COO)2.H2O") == 1);
    CHECK(waters("H10CuO9S", "CuSO4.5H2O") == 5);
    for (const char* const dry : {"H2O", "CuSO4", "2KHSO5.KHSO4.K2SO4", "Ce(NO3)3", "NaOH"})
        CHECK_MESSAGE(waters(dry) == 0, dry);
}

TEST_CASE("the crystal water of every substance in the catalogue is that of its name and of its structure") {
    // Prefixes of hydrates: IUPAC, Nomenclature of Inorganic Chemistry 2005, table IV (remembered).
    constexpr std::array<std::pair<std::string_view, int>, 6> prefixes{{{" monohydrate", 1},
                                                                        {" dihydrate", 2},
                                                                        {" trihydrate", 3},
                                                                        {" pentahydrate", 5},
                                                                        {" hexahydrate", 6},
                                                                        {" decahydrate", 10}}};
    std::size_t hydrates = 0;
    for (const Substance* const substance : Catalogue::embedded().all_substances()) {
        CAPTURE(substance->id);
        const auto* const named = std::find_if(prefixes.begin(), prefixes.end(), [&](const auto& prefix) {
            return substance->name.ends_with(prefix.first);
        });
        const int expected = named == prefixes.end() ? 0 : named->second;
        CHECK(crystal_water(*substance) == expected);
        if (!substance->smiles.empty() && substance->id != "water")
            CHECK(in_structure(*substance) == expected);
        hydrates += expected > 0 ? 1 : 0;
    }
    CHECK(hydrates >= 9);
}

TEST_CASE("molar masses without crystal water are those of the anhydrous salts") {
    // IUPAC 2021 abridged atomic weights: CuSO4 63.546 + 32.06 + 4 x 15.999 = 159.602 g/mol.
    const Substance* const vitriol = Catalogue::embedded().find_substance("copper(II) sulfate pentahydrate");
    REQUIRE(vitriol != nullptr);
    CHECK(anhydrous_molar_mass(*vitriol) == doctest::Approx(159.602).epsilon(1e-6));
    const Substance* const ethanol = Catalogue::embedded().find_substance("ethanol");
    CHECK(anhydrous_molar_mass(*ethanol) == ethanol->molar_mass);
    CHECK(molar_mass_of_water == doctest::Approx(Catalogue::embedded().find_substance("water")->molar_mass));
}
