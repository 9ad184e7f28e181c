// SPDX-License-Identifier: MIT
// The tables of waste practice for quenching and neutralising, reproduced from equations and formulas. The
// figures on the right are those tables as the project's reference notes print them (derived there; read
// while this was written), rounded there to two or three digits.
#include "assess/streams/neutralise.hpp"
#include "chemistry/formula.hpp"
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

const QuenchTable& table() {
    return us_rules().quench;
}

double molar(const char* formula) {
    return molar_mass(parse_formula(formula));
}

/// Equal to the digits that were printed: half a unit of the last one, and a little for their own rounding.
void check_printed(double computed, double printed, double last_digit) {
    CHECK(std::abs(computed - printed) <= 0.51 * last_digit);
}

const QuenchRow& row(const std::string& name) {
    for (const QuenchRow& one : table().oxidisers)
        if (one.name == name) return one;
    throw std::runtime_error("no row " + name);
}

/// g NaHSO3 for 1 g of what is weighed.
double sulfite_per_gram(const std::string& name, const char* weighed) {
    return row(name).reagent_per_mol() * molar("NaHSO3") / molar(weighed);
}

} // namespace

TEST_CASE("grams of hydrogensulfite for a gram of each oxidiser") {
    CHECK(std::abs(molar("NaHSO3") - 104.06) < 0.005);
    check_printed(sulfite_per_gram("bromine", "Br2"), 0.651, 0.001);
    check_printed(sulfite_per_gram("iodine", "I2"), 0.410, 0.001);
    check_printed(sulfite_per_gram("permanganate, in acid", "KMnO4"), 1.65, 0.01);
    check_printed(sulfite_per_gram("permanganate, neutral", "KMnO4"), 0.99, 0.01);
    check_printed(sulfite_per_gram("dichromate", "K2Cr2O7"), 1.06, 0.01);
    check_printed(sulfite_per_gram("peroxymonosulfate triple salt", "2KHSO5.KHSO4.K2SO4"), 0.34, 0.01);
    check_printed(sulfite_per_gram("N-bromosuccinimide", "C4H4BrNO2"), 0.585, 0.001);
    check_printed(sulfite_per_gram("meta-chloroperbenzoic acid", "C7H5ClO3"), 0.603, 0.001);
    check_printed(sulfite_per_gram("bromine", "Br2") * 3.10, 2.02, 0.01); // per mL
}

TEST_CASE("grams of hydrogensulfite for solutions, from their molarity") {
    const auto per_litre = [](const std::string& name) {
        return row(name).reagent_per_mol() * molar("NaHSO3");
    };
    check_printed(per_litre("hydrogen peroxide") * 9.8 / 1000, 1.02, 0.01);
    check_printed(per_litre("hydrogen peroxide") * 0.89 / 1000, 0.093, 0.001);
    // Bleach: the printed molarities are rounded, so that grams for 100 mL agree to 1 %.
    for (const auto& [molarity, grams] : {std::pair{0.76, 7.9}, std::pair{0.88, 9.1}, std::pair{1.23, 12.8}})
        CHECK(per_litre("hypochlorite") * molarity / 10 == doctest::Approx(grams).epsilon(0.01));
}

TEST_CASE("other reagents: thiosulfate, disulfite, sulfamic acid, acetone") {
    const Reducer* thiosulfate = table().reducer("sodium-thiosulfate-pentahydrate");
    REQUIRE(thiosulfate != nullptr);
    CHECK(std::abs(thiosulfate->molar_mass - 248.18) < 0.01);
    const auto thiosulfate_per_gram = [&](const std::string& name, const char* weighed) {
        return row(name).electrons() / thiosulfate->electrons * thiosulfate->molar_mass / molar(weighed);
    };
    check_printed(thiosulfate_per_gram("bromine", "Br2"), 3.11, 0.01);
    check_printed(thiosulfate_per_gram("iodine", "I2"), 1.96, 0.01);
    const Reducer* disulfite = table().reducer("sodium-metabisulfite");
    REQUIRE(disulfite != nullptr);
    check_printed(disulfite->molar_mass / disulfite->electrons / (molar("NaHSO3") / 2), 0.913, 0.001);
    const QuenchRow& nitrite = row("nitrite");
    check_printed(nitrite.reagent_per_mol() * molar("H3NSO3") / molar("NaNO2"), 1.41, 0.01);
    check_printed(1000 * nitrite.gas_per_mol() * table().litres_per_mol / molar("NaNO2"), 355, 1);
    const QuenchRow* borohydride = table().reducer_left("sodium-borohydride");
    REQUIRE(borohydride != nullptr);
    check_printed(borohydride->reagent_per_mol() * molar("C3H6O") / borohydride->reagent_density /
                      molar("NaBH4"),
                  7.8, 0.1);
    check_printed(borohydride->gas_per_mol() * table().litres_per_mol / molar("NaBH4"), 2.59, 0.01);
}

TEST_CASE("oxygen from peroxide and acid from quenched bromine") {
    check_printed(row("hydrogen peroxide").gas_per_mol() * table().litres_per_mol * 9.8, 120, 1);
    check_printed(row("hydrogen peroxide").gas_per_mol() * table().litres_per_mol * 0.89, 11, 1);
    CHECK(row("bromine").acid_per_mol() == doctest::Approx(3));
    check_printed(row("bromine").acid_per_mol() * molar("NaHCO3") / molar("Br2"), 1.58, 0.01);
    CHECK(row("hydrogen peroxide").acid_per_mol() == doctest::Approx(1));
    CHECK(row("bromate").acid_per_mol() == doctest::Approx(3));
    CHECK(row("cerium(IV)").acid_per_mol() == doctest::Approx(1.5));
    CHECK(row("dichromate").acid_per_mol() == doctest::Approx(-5)); // uses up acid
    CHECK(row("bromate").electrons() == doctest::Approx(6));
    CHECK(row("cerium(IV)").electrons() == doctest::Approx(1));
}

TEST_CASE("a mol of acid: grams of base and litres of carbon dioxide") {
    const Neutralisation one = neutralise(1, 100, table());
    check_printed(one.with("NaHCO3")->grams, 84.0, 0.1);
    check_printed(one.with("NaHCO3")->gas_litres, 24.5, 0.1);
    check_printed(one.with("Na2CO3")->grams, 53.0, 0.1);
    check_printed(one.with("Na2CO3")->gas_litres, 12.2, 0.1);
    check_printed(one.with("CaCO3")->grams, 50.0, 0.1);
    check_printed(one.with("CaCO3")->gas_litres, 12.2, 0.1);
    check_printed(one.with("NaOH")->grams, 40.0, 0.1);
    CHECK(one.with("NaOH")->gas_litres == 0);
    check_printed(one.with("Ca(OH)2")->grams, 37.0, 0.1);
    CHECK(one.vessel == doctest::Approx(400)); // four times the liquid: common practice, no source
    // 57 kJ/mol, the textbook heat of neutralisation; bicarbonate takes heat up.
    CHECK(*one.with("NaOH")->heat == doctest::Approx(55.8).epsilon(0.03));
    CHECK(*one.with("NaHCO3")->heat < 0);
}

TEST_CASE("one millilitre of each stock acid") {
    struct Stock {
        const char* name;
        double mmol, bicarbonate, carbon_dioxide, carbonate, hydroxide;
    };
    // Molarities remembered there; sulfuric acid counts both protons, phosphoric acid 1.5, the anhydride 2.
    for (const Stock& stock :
         {Stock{"37 % HCl", 12.1, 1.02, 296, 0.64, 0.48},
          Stock{"6 M HCl, 3 M H2SO4", 6.0, 0.50, 147, 0.32, 0.24},
          Stock{"3 M HCl", 3.0, 0.25, 73, 0.16, 0.12}, Stock{"48 % HBr", 8.9, 0.75, 218, 0.47, 0.36},
          Stock{"96 % H2SO4", 36.0, 3.02, 881, 1.91, 1.44}, Stock{"70 % HNO3", 15.8, 1.33, 387, 0.84, 0.63},
          Stock{"glacial acetic acid", 17.4, 1.46, 426, 0.92, 0.70},
          Stock{"TFA", 13.0, 1.09, 318, 0.69, 0.52}, Stock{"85 % H3PO4", 22.05, 1.85, 539, 1.17, 0.88},
          Stock{"88 % formic acid", 21.0, 1.76, 514, 1.11, 0.84},
          Stock{"acetic anhydride", 21.2, 1.78, 519, 1.12, 0.85}}) {
        INFO(stock.name);
        const Neutralisation one = neutralise(stock.mmol / 1000, 1, table());
        check_printed(one.with("NaHCO3")->grams, stock.bicarbonate, 0.01);
        check_printed(1000 * one.with("NaHCO3")->gas_litres, stock.carbon_dioxide, 1);
        check_printed(one.with("Na2CO3")->grams, stock.carbonate, 0.01);
        check_printed(one.with("NaOH")->grams, stock.hydroxide, 0.01);
    }
}

TEST_CASE("the same molarities from the bottles of the catalogue, within 2 %") {
    const auto protons_per_mL = [](const char* name) {
        const Material* material = catalogue().find_material(name);
        REQUIRE(material != nullptr);
        Composition one;
        for (const Component& component : material->components) {
            const double density = material->density ? *material->density : *component.substance->density;
            one.add(*component.substance, component.mass_fraction * density);
        }
        const AcidBaseLeft left = count_acid_and_base(one, us_rules().acid_base);
        return 1000 * (left.strong_acid + left.weak_acid);
    };
    struct Acid {
        const char* name;
        double mmol;
    };
    for (const Acid& acid : {Acid{"hydrochloric acid 37 %", 12.1}, Acid{"hydrochloric acid 6 M", 6.0},
                             Acid{"sulfuric acid 3 M", 6.0}, Acid{"hydrobromic acid 48 %", 8.9},
                             Acid{"sulfuric acid 96 %", 36.0}, Acid{"nitric acid 70 %", 15.8},
                             Acid{"acetic acid, glacial", 17.4}, Acid{"phosphoric acid 85 %", 22.0},
                             Acid{"acetic anhydride", 21.2}}) {
        INFO(acid.name);
        CHECK(protons_per_mL(acid.name) == doctest::Approx(acid.mmol).epsilon(0.02));
    }
    // Formic acid 88 %: 0.88 x 1.20 / 46.03 is 22.9 mol/L, where the reference notes say about 20 to 21.
    CHECK(protons_per_mL("formic acid 88 %") == doctest::Approx(22.9).epsilon(0.01));
}

TEST_CASE("equations that do not balance, or lack their species, are refused") {
    CHECK_THROWS_AS(QuenchEquation("Br2 + HSO3^- -> 2 Br^- + HSO4^-"), EquationError);
    CHECK_NOTHROW(QuenchEquation("Br2 + HSO3^- + H2O -> 2 Br^- + HSO4^- + 2 H^+"));
    Source broken = file("hazard-data/schemes/quench.json");
    const std::string good = "\"H2O2 + HSO3^- -> HSO4^- + H2O\"";
    broken.text.replace(broken.text.find(good), good.size(), "\"H2O2 + HSO3^- -> HSO4^-\"");
    CHECK_THROWS_AS(read_quench_table(broken), InputError);
}

TEST_CASE("every oxidiser of the table is a substance of the catalogue with that species in it") {
    for (const QuenchRow& one : table().oxidisers) {
        INFO(one.name);
        CHECK((one.id.empty() || catalogue().find_substance(one.id) != nullptr));
        CHECK_FALSE(one.tests.empty());
        CHECK(one.reagent_per_mol() > 0);
        CHECK(one.from.standing == Standing::derived);
    }
    for (const Reducer& one : table().reducers) {
        REQUIRE(catalogue().find_substance(one.id) != nullptr);
        CHECK(catalogue().find_substance(one.id)->molar_mass ==
              doctest::Approx(one.molar_mass).epsilon(1e-6));
    }
}

// Heats of reaction: hydrogen peroxide with hydrogensulfite frees about 356 kJ/mol from enthalpies of
// formation (tables, remembered: -191.2, -626.2, -887.3, -285.8 kJ/mol).
TEST_CASE("heat of a quench from enthalpies of formation") {
    CHECK(*row("hydrogen peroxide").equation.enthalpy("H2O2", table().formation) == doctest::Approx(-355.7));
    CHECK_FALSE(row("N-bromosuccinimide").equation.enthalpy("C4H4BrNO2", table().formation).has_value());
    CHECK(warming(4.18, 1000) == doctest::Approx(1));
}
