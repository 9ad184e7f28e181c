// SPDX-License-Identifier: MIT
#include "chemistry/element.hpp"
#include "chemistry/formula.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace routeweigh;
using doctest::Approx;

TEST_CASE("formulas are read into atoms and charge") {
    struct Row {
        const char* text;
        const char* hill; // the same in another order, worked out by hand
        int charge;
    };
    const std::vector<Row> rows = {
        {"H2O", "H2O", 0},
        {"Br2", "Br2", 0},
        {"C8H9NO", "C8H9NO", 0},
        {"CH3CONHC6H5", "C8H9NO", 0},
        {"NaHCO3", "CHNaO3", 0},
        {"CO", "CO", 0},
        {"Co", "Co", 0},
        {"HF", "FH", 0},
        {"Hf", "Hf", 0},
        {"Ca(OH)2", "CaH2O2", 0},
        {"(NH4)2SO4", "H8N2O4S", 0},
        {"(NH4)2Ce(NO3)6", "CeH8N8O18", 0},
        {"K4[Fe(CN)6]", "C6FeK4N6", 0},
        {"[Co(NH3)5Cl]Cl2", "Cl3CoH15N5", 0},
        {"Fe4[Fe(CN)6]3", "C18Fe7N18", 0},
        {"((CH3)3Si)2NH", "C6H19NSi2", 0},
        {"CuSO4.5H2O", "CuH10O9S", 0},
        {"CuSO4\u00b75H2O", "CuH10O9S", 0},
        {"CuSO4\u22c55H2O", "CuH10O9S", 0},
        {"Na2CO3.H2O", "CH2Na2O4", 0},
        {"KAl(SO4)2.12H2O", "AlH24KO20S2", 0},
        {"2KHSO5.KHSO4.K2SO4", "H3K5O18S4", 0},
        {"(COOH)2.2H2O", "C2H6O6", 0},
        {"3CdSO4.8H2O", "Cd3H16O20S3", 0},
        {"NH4+", "H4N^+", 1},
        {"NH4^+", "H4N^+", 1},
        {"Na+", "Na^+", 1},
        {"Br-", "Br^-", -1},
        {"SO4^2-", "O4S^2-", -2},
        {"Fe^3+", "Fe^3+", 3},
        {"Ca++", "Ca^2+", 2},
        {"Br3^-", "Br3^-", -1},
        {"Hg2^2+", "Hg2^2+", 2},
        {"MnO4-", "MnO4^-", -1},
        {"HCO3-", "CHO3^-", -1},
        {"Al(OH)4-", "AlH4O4^-", -1},
        {"[Fe(CN)6]^4-", "C6FeN6^4-", -4},
        {"e-", "e^-", -1},
        {"H\u2082O", "H2O", 0}, // as web pages and word processors write it
        {"SO\u2084\u00b2\u207b", "O4S^2-", -2},
        {"NH\u2084\u207a", "H4N^+", 1},
        {"C\u2081\u2082H\u2082\u2082O\u2081\u2081", "C12H22O11", 0},
        {"  H2O ", "H2O", 0},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string(row.text));
        const Formula formula = parse_formula(row.text);
        CHECK(hill_text(formula) == row.hill);
        CHECK(formula.charge == row.charge);
    }
    CHECK(parse_formula(" CuSO4.5H2O").text == "CuSO4.5H2O");
    CHECK(atoms_of(parse_formula("CuSO4.5H2O"), *element_by_symbol("O")) == 9);
    CHECK(atoms_of(parse_formula("CuSO4.5H2O"), *element_by_symbol("N")) == 0);
}

TEST_CASE("what is no formula is refused at its place") {
    struct Row {
        const char* text;
        std::size_t position;
        const char* message;
    };
    const std::vector<Row> rows = {
        {"", 0, "missing"},
        {"Xy2", 0, "no element \"Xy\""},
        {"NaCk", 2, "no element \"Ck\""},
        {"NACL", 1, "no element \"A\""},
        {"h2o", 0, "capital letter"},
        {"C6H5oH", 4, "capital letter"},
        {"TcO2", 0, "no standard atomic weight"},
        {"Ca(OH2", 2, "not closed"},
        {"Ca(OH]2", 5, "closes nothing"},
        {"CaOH)2", 4, "closes nothing"},
        {"Ca()2", 2, "empty brackets"},
        {"H0", 1, "whole number from 1"},
        {"H02", 1, "whole number from 1"},
        {"C9999999", 1, "a count above"},
        {"(C100000)100", 12, "more than 1000000 atoms"},
        {"2H2O", 0, "does not begin with a number"},
        {"CuSO4.", 6, "ends where an element is due"},
        {"CuSO4..5H2O", 6, "does not belong"},
        {"CuSO4.0.5H2O", 6, "whole number from 1"},
        {"CuSO4 .5H2O", 5, "space"},
        {"H2O!", 3, "\"!\" does not belong"},
        {"H\u00bdO", 1, "\"\u00bd\" does not belong"},
        {"Fe3+", 2, "write \"Fe^3+\" or \"Fe3^+\""},
        {"I3-", 1, "write \"I^3-\" or \"I3^-\""},
        {"SO42-", 2, "write \"SO4^2-\" or \"SO42^-\""},
        {"[Fe(CN)6]3-", 9, "write \"[Fe(CN)6]^3-\""},
        {"Ca^+2", 3, "before the sign"},
        {"Ca^2", 2, "a charge is written"},
        {"Ca^", 2, "a charge is written"},
        {"Ca^2+x", 2, "a charge is written"},
        {"Na+-", 2, "either positive or negative"},
        {"Na^100+", 2, "more than 99"},
        {"+", 0, "ends where an element is due"},
        {"^2+", 0, "ends where an element is due"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string(row.text));
        try {
            parse_formula(row.text);
            FAIL_CHECK("not refused");
        } catch (const FormulaError& error) {
            CAPTURE(std::string(error.what()));
            CHECK(error.position == row.position);
            CHECK(std::string(error.what()).find(row.message) != std::string::npos);
        }
    }
}

TEST_CASE("ten thousand open brackets are refused without harm") {
    CHECK_THROWS_AS(parse_formula(std::string(10000, '(')), FormulaError);
    CHECK(parse_formula(std::string(10000, '(') + 'H' + std::string(10000, ')')).atoms.size() == 1);
}

// Molar masses as handbooks print them (CRC Handbook of Chemistry and Physics, Physical Constants; from
// memory), which were computed with older atomic weights: they agree to 0.02 g/mol.
TEST_CASE("molar masses agree with handbook values") {
    const auto mass = [](const char* text) { return molar_mass(parse_formula(text)); };
    CHECK(mass("H2O") == Approx(18.015).epsilon(1e-6));
    CHECK(mass("CuSO4.5H2O") == Approx(249.685).epsilon(8e-5));
    CHECK(mass("K4[Fe(CN)6].3H2O") == Approx(422.388).epsilon(5e-5));
    CHECK(mass("(NH4)2Ce(NO3)6") == Approx(548.218).epsilon(4e-5));
    CHECK(mass("KAl(SO4)2.12H2O") == Approx(474.389).epsilon(5e-5));
    CHECK(mass("C8H8BrNO") == Approx(214.060).epsilon(1e-4));
    CHECK(mass("e-") == 0);
}

TEST_CASE("a moved atomic weight moves a molar mass by the count of its atoms, and no other element") {
    AtomicWeights weights;
    weights.move(*element_by_symbol("S"), 0.01);
    CHECK(molar_mass(parse_formula("Na2S2O3"), weights) - molar_mass(parse_formula("Na2S2O3")) ==
          Approx(0.02).epsilon(1e-9));
    CHECK(molar_mass(parse_formula("NaCl"), weights) == molar_mass(parse_formula("NaCl")));
}
