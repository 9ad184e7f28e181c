// SPDX-License-Identifier: MIT
#include "hazard_case.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;
using Kind = ExposureLimit::Kind;
using State = Substance::Phase;

// Limits of ethanol and dichloromethane: the worked example of the banding notes, 1880 and 353 mg/m3
// (memory), which are 1000 ppm and 100 ppm in round figures.
TEST_CASE("ppm become mg/m3 with 24.45 litres a mole") {
    Substance ethanol = substance("ethanol", State::liquid, 46.069, {});
    ethanol.exposure_limit = limit(1000, "ppm", Kind::time_weighted);
    // 1000 ppm x 46.069 g/mol / 24.45 L/mol = 1884.21 mg/m3; 1000 mg / 1884.21 mg/m3 = 0.530726 m3
    CHECK(per_gram("inhalation", entry_neat(ethanol)).low == Approx(0.530726).epsilon(1e-6));

    Substance bromine = substance("bromine", State::liquid, 159.808, {});
    bromine.exposure_limit = limit(0.1, "ppm", Kind::time_weighted);
    // 0.1 x 159.808 / 24.45 = 0.653611 mg/m3
    CHECK(per_gram("inhalation", entry_neat(bromine)).low == Approx(1529.961).epsilon(1e-6));
    bromine.exposure_limit = limit(0.653611, "mg/m3", Kind::time_weighted);
    CHECK(per_gram("inhalation", entry_neat(bromine)).low == Approx(1529.961).epsilon(1e-5));
}

TEST_CASE("a limit comes before a band and is exact") {
    Substance acid = substance("acid", State::liquid, 60.052, {entry("Skin Corr.", "1A", "H314")});
    CHECK(per_gram("inhalation", entry_neat(acid)).basis == HazardBasis::band);
    acid.exposure_limit = limit(10, "ppm", Kind::time_weighted);
    const HazardContribution with = per_gram("inhalation", entry_neat(acid));
    CHECK(with.basis == HazardBasis::limit);
    CHECK(with.exact());
    CHECK(with.low == Approx(40.71471).epsilon(1e-6)); // 1000 / (10 x 60.052 / 24.45)
}

TEST_CASE("a ceiling or a limit of 15 minutes is labelled and stays out of the figure") {
    Substance gas = substance("hydrogen bromide", State::gas, 80.912, {entry("Skin Corr.", "1A", "H314")});
    for (const Kind kind : {Kind::ceiling, Kind::short_term}) {
        gas.exposure_limit = limit(2, "ppm", kind);
        const HazardContribution found = per_gram("inhalation", entry_neat(gas));
        CHECK(found.basis == HazardBasis::short_term_limit);
        CHECK(found.low == 0.0);
        CHECK(found.high == 0.0);
        CHECK(found.level == -1);                                  // nor does it order severities
        CHECK(found.short_term == Approx(151.0901).epsilon(1e-6)); // 1000 / (2 x 80.912 / 24.45)
    }
}

TEST_CASE("a band is an interval: edges in ppm for liquids and gases, in mg/m3 for solids") {
    const GhsEntry harmful = entry("Acute Tox.", "4", "H302"); // band C
    const Substance solid = substance("solid", State::solid, 100, {harmful});
    CHECK(per_gram("inhalation", entry_neat(solid)).low == Approx(1000));   // 1 mg/m3
    CHECK(per_gram("inhalation", entry_neat(solid)).high == Approx(10000)); // 0.1 mg/m3
    // Example of the banding notes: dichloromethane, M = 84.93 g/mol, in band D has 1 ppm = 3.5 mg/m3 as
    // upper edge.
    const Substance liquid =
        substance("dichloromethane", State::liquid, 84.93, {entry("Carc.", "2", "H351")});
    CHECK(1000.0 / per_gram("inhalation", entry_neat(liquid)).low == Approx(3.5).epsilon(0.01));
    CHECK(per_gram("inhalation", entry_neat(liquid)).high ==
          Approx(10 * per_gram("inhalation", entry_neat(liquid)).low));
    const Substance gas = substance("gas", State::gas, 84.93, {entry("Carc.", "2", "H351")});
    CHECK(per_gram("inhalation", entry_neat(gas)).low == per_gram("inhalation", entry_neat(liquid)).low);
}

TEST_CASE("the last band has no lower edge, so nothing bounds the demand") {
    const Substance acid = substance("acid", State::solid, 100, {entry("Skin Corr.", "1B", "H314")});
    const HazardContribution found = per_gram("inhalation", entry_neat(acid));
    CHECK(found.low == Approx(100000)); // 0.01 mg/m3
    CHECK(std::isinf(found.high));
    CHECK(found.level == 0);
}

TEST_CASE("assessed and unclassified is nothing; not assessed is never nothing") {
    const Substance salt = substance("salt", State::solid, 58.44, {});
    Substance unknown = substance("unknown", State::solid, 58.44, {});
    unknown.assessed = false;
    // Worst of each endpoint: no bound, 1 and 0.1 g/m3, 0.5 and 5 mg/kg, and the full mass.
    const std::vector<std::pair<std::string, double>> worst{
        {"inhalation", HUGE_VAL}, {"aquatic_acute", 1}, {"aquatic_chronic", 10},
        {"oral", 2000},           {"dermal", 200},      {"fire", 1},
        {"contact", 1},           {"sensitisation", 1}, {"long_term", 1}};
    REQUIRE(worst.size() == schemes().score.endpoints.size());
    for (const auto& each : worst) {
        const std::string& id = each.first;
        CHECK_MESSAGE(!per_gram(id, entry_neat(salt)).counts(), id);
        const HazardContribution found = per_gram(id, entry_neat(unknown));
        CHECK_MESSAGE(found.unassessed, id);
        CHECK_MESSAGE(found.basis == HazardBasis::unassessed, id);
        CHECK_MESSAGE(found.low == 0.0, id);
        CHECK_MESSAGE(found.high == each.second, id);
    }
}

TEST_CASE("a limit judges the air even where no classification was found") {
    Substance unknown = substance("unknown", State::liquid, 100, {});
    unknown.assessed = false;
    unknown.exposure_limit = limit(10, "mg/m3", Kind::time_weighted);
    CHECK(per_gram("inhalation", entry_neat(unknown)).basis == HazardBasis::limit);
    CHECK(per_gram("oral", entry_neat(unknown)).unassessed);
}

TEST_CASE("without a molar mass a vapour cannot be put into a band and counts as unassessed") {
    Substance spirit =
        substance("light petroleum", State::liquid, std::nan(""), {entry("Muta.", "1B", "H340")});
    CHECK(per_gram("inhalation", entry_neat(spirit)).unassessed);
    spirit.exposure_limit = limit(300, "ppm", Kind::time_weighted);
    CHECK(per_gram("inhalation", entry_neat(spirit)).unassessed);
    spirit.exposure_limit = limit(1000, "mg/m3", Kind::time_weighted);
    CHECK(per_gram("inhalation", entry_neat(spirit)).low == Approx(1));
}

TEST_CASE("water: class limits, divided by the M-factor; a missing one is 1 and marked") {
    GhsEntry acute = entry("Aquatic Acute", "1", "H400");
    Substance fish = substance("fish poison", State::solid, 100, {acute});
    CHECK(per_gram("aquatic_acute", entry_neat(fish)).low == Approx(1));
    CHECK(per_gram("aquatic_acute", entry_neat(fish)).m_factor_assumed);
    CHECK(per_gram("aquatic_chronic", entry_neat(fish)).low == 0.0);
    fish.ghs[0].m_factor = 100;
    CHECK(per_gram("aquatic_acute", entry_neat(fish)).low == Approx(100));
    CHECK(!per_gram("aquatic_acute", entry_neat(fish)).m_factor_assumed);
    fish.ghs = {entry("Aquatic Chronic", "1", "H410")};
    CHECK(per_gram("aquatic_chronic", entry_neat(fish)).low == Approx(10));
    fish.ghs[0].m_factor = 10;
    CHECK(per_gram("aquatic_chronic", entry_neat(fish)).low == Approx(100));
    fish.ghs = {entry("Aquatic Chronic", "2", "H411")};
    CHECK(per_gram("aquatic_chronic", entry_neat(fish)).low == Approx(1));
    CHECK(!per_gram("aquatic_chronic", entry_neat(fish)).m_factor_assumed);
    fish.ghs = {entry("Aquatic Chronic", "3", "H412")};
    CHECK(per_gram("aquatic_chronic", entry_neat(fish)).low == Approx(1)); // our convention
    fish.ghs = {entry("Aquatic Acute", "2", "H401")};
    CHECK(per_gram("aquatic_acute", entry_neat(fish)).low == Approx(0.1));
    fish.ghs = {entry("Aquatic Acute", "3", "H402")};
    CHECK(per_gram("aquatic_acute", entry_neat(fish)).low == Approx(0.01));
}

TEST_CASE("H413 has no limit, so its mass is unassessed for long-term harm in water and for nothing else") {
    const Substance wax = substance("wax", State::solid, 100, {entry("Aquatic Chronic", "4", "H413")});
    const HazardContribution found = per_gram("aquatic_chronic", entry_neat(wax));
    CHECK(found.unassessed);
    CHECK(found.low == 0.0);
    CHECK(found.high == Approx(10));
    CHECK(!per_gram("aquatic_acute", entry_neat(wax)).counts());
    CHECK(!per_gram("contact", entry_neat(wax)).counts());
}

// Converted acute toxicity point estimates, Regulation (EC) No 1272/2008, Annex I, Table 3.1.2 (memory).
TEST_CASE("doses: the point of the category, or the harmonised estimate of this route of uptake") {
    const auto dose = [](const std::string& id, GhsEntry made) {
        const Substance poison = substance("poison", State::solid, 100, {std::move(made)});
        return 1000.0 / per_gram(id, entry_neat(poison)).low;
    };
    CHECK(dose("oral", entry("Acute Tox.", "1", "H300")) == Approx(0.5));
    CHECK(dose("oral", entry("Acute Tox.", "2", "H300")) == Approx(5));
    CHECK(dose("oral", entry("Acute Tox.", "3", "H301")) == Approx(100));
    CHECK(dose("oral", entry("Acute Tox.", "4", "H302")) == Approx(500));
    CHECK(dose("dermal", entry("Acute Tox.", "1", "H310")) == Approx(5));
    CHECK(dose("dermal", entry("Acute Tox.", "2", "H310")) == Approx(50));
    CHECK(dose("dermal", entry("Acute Tox.", "3", "H311")) == Approx(300));
    CHECK(dose("dermal", entry("Acute Tox.", "4", "H312")) == Approx(1100));
    CHECK(std::isinf(dose("oral", entry("Acute Tox.", "3", "H331")))); // by inhalation, not by mouth
    GhsEntry harmonised = entry("Acute Tox.", "3", "H301");
    harmonised.acute_toxicity = AcuteToxicityEstimate{"oral", 64, "mg/kg bw", ""};
    CHECK(dose("oral", harmonised) == Approx(64));
    harmonised.acute_toxicity->route = "inhalation";
    CHECK(dose("oral", harmonised) == Approx(100));
}

TEST_CASE("graded: a substance counts once, at its worst level") {
    const Substance both = substance("both", State::liquid, 100,
                                     {entry("Skin Irrit.", "2", "H315"), entry("Skin Corr.", "1B", "H314"),
                                      entry("Eye Dam.", "1", "H318")});
    CHECK(per_gram("contact", entry_neat(both)).low == 1.0);
    CHECK(!per_gram("contact", entry_neat(both)).lower_level);
    const Substance mild = substance("mild", State::liquid, 100, {entry("Skin Irrit.", "2", "H315")});
    CHECK(per_gram("contact", entry_neat(mild)).low == 0.0);
    CHECK(per_gram("contact", entry_neat(mild)).high == 0.0);
    CHECK(per_gram("contact", entry_neat(mild)).lower_level);
    for (const char* statement : {"H350i", "H360FD", "H372", "H340", "H370"})
        CHECK(
            per_gram("long_term", entry_neat(substance("x", State::solid, 100, {entry("", "1B", statement)})))
                .low == 1.0);
    for (const char* statement : {"H361fd", "H351", "H341", "H371", "H373"})
        CHECK(
            per_gram("long_term", entry_neat(substance("x", State::solid, 100, {entry("", "2", statement)})))
                .lower_level);
    for (const char* statement : {"H220", "H222", "H224", "H225", "H226"})
        CHECK(per_gram("fire", entry_neat(substance("x", State::liquid, 100, {entry("", "1", statement)})))
                  .low == 1.0);
    for (const char* statement : {"H270", "H271", "H272", "H290"})
        CHECK(!per_gram("fire", entry_neat(substance("x", State::liquid, 100, {entry("", "1", statement)})))
                   .counts());
}

TEST_CASE("a solute takes the entry of the solution, a gas and a neat bottle that of the pure substance") {
    Substance acid = substance("nitric acid", State::liquid, 63.012, {entry("Acute Tox.", "1", "H330")});
    acid.ghs_solution = SolutionClassification{};
    acid.ghs_solution->ghs = {entry("Skin Corr.", "1A", "H314")};
    acid.ghs_solution->source = "the other row";
    CHECK(per_gram("contact", entry_neat(acid)).low == 0.0);
    CHECK(per_gram("contact", entry_in_water(acid)).low == 1.0);
    CHECK(entry_in_water(acid).source() == "the other row");
    const Substance alone = substance("alone", State::liquid, 100, {});
    CHECK(!entry_in_water(alone).solution);
}

TEST_CASE("provenance names the datum, its source, and whether it was recalled") {
    Substance acid = substance("acid", State::solid, 100, {entry("Acute Tox.", "4", "H302")});
    acid.ghs_source = "typical supplier self-classification (not harmonised)";
    acid.sources["ghs"] = "memory";
    const HazardContribution air = per_gram("inhalation", entry_neat(acid));
    const HazardProvenance found = provenance(air, entry_neat(acid), schemes().bandings[0]);
    CHECK(found.from_memory);
    CHECK(found.datum.find("H302 category 4, band C") == 0);
    CHECK(found.source == acid.ghs_source);
    acid.sources["ghs"] = "EU CLP Annex VI Table 3";
    CHECK(
        !provenance(per_gram("oral", entry_neat(acid)), entry_neat(acid), schemes().bandings[0]).from_memory);
}
