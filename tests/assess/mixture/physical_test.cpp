// SPDX-License-Identifier: MIT
// Physical hazards: what specific limits, transport classes and ingredients say, and what only a test
// decides.
#include "mixture_case.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;

namespace {

MixtureClassification peroxide(double percent) {
    return bottle({{"hydrogen peroxide", percent}, {"water", 100 - percent}});
}

const MixtureResult& oxidising(const MixtureClassification& judged) {
    return *judged.result("oxidising");
}

bool says(const MixtureResult& result, std::string_view text) {
    return all_lines(result).find(text) != std::string::npos;
}

} // namespace

TEST_CASE("hydrogen peroxide by its specific limits, and below them by its transport class") {
    // CLP Annex VI, 008-003-00-9: from 70 % Ox. Liq. 1, from 50 % Ox. Liq. 2 (read). Transport: 8, 20 and 60
    // % (edges at 20 and 60 % read in insurers' sheets, 8 % from memory).
    CHECK(found(peroxide(70), "oxidising") == "Ox. Liq. 1");
    CHECK(found(peroxide(69.9), "oxidising") == "Ox. Liq. 2");
    CHECK(found(peroxide(50), "oxidising") == "Ox. Liq. 2");
    CHECK(found(peroxide(49.9), "oxidising") == "");
    CHECK(oxidising(peroxide(49.9)).outcome == MixtureOutcome::test_needed);
    CHECK(says(oxidising(peroxide(30)), "packing group II "));
    CHECK(says(oxidising(peroxide(20)), "packing group II "));
    CHECK(says(oxidising(peroxide(19.9)), "packing group III"));
    CHECK(oxidising(peroxide(8)).outcome == MixtureOutcome::test_needed);
    CHECK(oxidising(peroxide(7.9)).outcome == MixtureOutcome::not_classified);
    CHECK(says(oxidising(peroxide(65)), "packing group I "));
    CHECK(says(oxidising(peroxide(60)), "confirmed by test"));
}

TEST_CASE("nitric acid up to 70 % takes the entry of the solution") {
    // CLP Annex VI, 007-030-00-3: Ox. Liq. 3 from 65 %; 007-004-00-1 above 70 % (read in the catalogue's
    // source).
    const auto at = [](double percent) {
        return bottle({{"nitric acid", percent}, {"water", 100 - percent}});
    };
    CHECK(found(at(65), "oxidising") == "Ox. Liq. 3");
    CHECK(found(at(64.9), "oxidising") == "");
    CHECK(found(at(70), "acute_inhalation") == "Acute Tox. 3");
    CHECK(found(at(70.1), "acute_inhalation") == "Acute Tox. 1");
    CHECK(found(at(99), "oxidising") == "Ox. Liq. 2");
}

TEST_CASE("dissolved oxidising solids need a test") {
    const auto judged = bottle({{"sodium nitrite", 30}, {"water", 70}});
    CHECK(oxidising(judged).outcome == MixtureOutcome::test_needed);
    CHECK(says(oxidising(judged), "test O.1"));
    CHECK(oxidising(bottle({{"sodium chloride", 20}, {"water", 80}})).outcome ==
          MixtureOutcome::not_classified);
}

TEST_CASE("corrosion of metals is never classified from composition") {
    for (const char* name : {"hydrochloric acid 37 %", "formic acid 88 %", "sodium hydroxide 10 %"}) {
        const auto judged = bottle(name);
        CHECK_MESSAGE(judged.result("metal_corrosion")->outcome == MixtureOutcome::test_needed, name);
        CHECK(says(*judged.result("metal_corrosion"), "test C.1"));
    }
    const auto plain = bottle({{"ethanol", 30}, {"water", 70}});
    CHECK(plain.result("metal_corrosion")->outcome == MixtureOutcome::not_judged);
    Mixed acid;
    acid.of("Skin Irrit. 2", 1);
    acid.facts().ph = 1.5;
    CHECK(acid.judged().result("metal_corrosion")->outcome == MixtureOutcome::test_needed);
    CHECK(found(bottle("formic acid"), "metal_corrosion") == "Met. Corr. 1"); // neat, by its entry
}

// CLP Annex VI, 017-002-01-X: hydrochloric acid, from 10 % irritant, from 25 % corrosive; 017-002-00-2: the
// gas, Skin Corr. 1A without limits of its own, so the generic 1 and 5 % of table 3.2.3 hold (read in the
// catalogue's source).
TEST_CASE("a gas in a solvent without water is judged by the entry of the gas, not of its aqueous solution") {
    const auto in_water = bottle({{"hydrogen chloride", 6}, {"water", 94}});
    CHECK(in_water.mixture.ingredients[1].solution);
    CHECK(found(in_water, "skin") == "");
    for (const char* solvent : {"hexane", "dichloromethane"}) {
        INFO(solvent);
        const auto dry = bottle({{"hydrogen chloride", 6}, {solvent, 94}});
        CHECK_FALSE(dry.mixture.ingredients[1].solution);
        CHECK(found(dry, "skin") == "Skin Corr. 1A");
        CHECK(dry.result("gas_under_pressure") == nullptr);
        CHECK(found(bottle({{"hydrogen chloride", 4.9}, {solvent, 95.1}}), "skin") == "Skin Irrit. 2");
        // What little water a wet layer holds dissolves no such amount.
        const auto wet = bottle({{"hydrogen chloride", 6}, {"water", 0.5}, {solvent, 93.5}});
        CHECK(found(wet, "skin") == "Skin Corr. 1A");
    }
    const auto acetic = bottle("hydrogen bromide 33 % in acetic acid");
    CHECK(found(acetic, "skin") == "Skin Corr. 1A");
    CHECK(statements(acetic).find("H280") == std::string::npos);
    CHECK(join(acetic.notes(), "\n").find("a dissolved gas, by the entry of the gas") != std::string::npos);
}

TEST_CASE("a dissolved gas is no gas under pressure") {
    const auto acid = bottle("hydrobromic acid 48 %");
    CHECK(acid.mixture.ingredients[1].solution);
    CHECK(acid.result("gas_under_pressure") == nullptr);
    CHECK(statements(acid) == "H314 H335");
    CHECK(statements(bottle("hydrogen bromide")) == "H280 H314 H335");
    const auto notes = join(acid.notes(), "\n");
    CHECK(notes.find("the entry of its solution holds") != std::string::npos);

    Mixture liquor = mixture_of(Catalogue::embedded(), "liquor", {{"chlorine", 0.5}, {"water", 99.5}});
    liquor.ingredients.front().dissolved = true;
    const auto judged = classify(liquor, rules());
    CHECK(judged.result("gas_under_pressure") == nullptr);
    CHECK(statements(judged).find("H270") == std::string::npos);
    CHECK(found(judged, "aquatic_acute") == "Aquatic Acute 1"); // 100 x 0.5 = 50
}

TEST_CASE("mixtures of gases, slurries and salts that burn are named for their tests") {
    const auto gases = bottle({{"hydrogen", 10}, {"nitrogen", 90}});
    CHECK(gases.result("flammable_gas")->outcome == MixtureOutcome::test_needed);
    CHECK(says(*gases.result("flammable_gas"), "ISO 10156"));
    CHECK(gases.result("gas_under_pressure")->outcome == MixtureOutcome::test_needed);
    const auto slurry = bottle("Raney nickel, 50 % slurry in water");
    CHECK(slurry.result("pyrophoric")->outcome == MixtureOutcome::test_needed);
    CHECK(says(*slurry.result("pyrophoric"), "added by suppliers"));
    const auto undecided = slurry.undecided();
    CHECK(std::find(undecided.begin(), undecided.end(), "Catches fire in air") != undecided.end());
    const auto plain = bottle({{"sodium chloride", 10}, {"water", 90}});
    CHECK(plain.result("other_physical")->outcome == MixtureOutcome::not_judged);
}

TEST_CASE("statements on gas with acids come from a stated share on, or from the entry's own limit") {
    const auto bleach = [](double percent) {
        return bottle({{"sodium hypochlorite", percent}, {"water", 100 - percent}});
    };
    // CLP Annex VI, 017-011-00-1: EUH031 from 5 % (read in the catalogue's source).
    CHECK(bleach(5).label.supplemental == std::vector<std::string>{"EUH031"});
    CHECK(bleach(4.99).label.supplemental.empty());
    CHECK(says(*bleach(4.99).result("gas_release"), "only from 5 % on"));
    CHECK(bottle({{"sodium metabisulfite", 0.1}, {"water", 99.9}}).label.supplemental ==
          std::vector<std::string>{"EUH031"});
    CHECK(bottle({{"sodium metabisulfite", 0.09}, {"water", 99.91}}).label.supplemental.empty());
    CHECK(bottle({{"sodium cyanide", 1}, {"water", 99}}).label.supplemental ==
          std::vector<std::string>{"EUH032"});
    const auto chloride = bottle({{"thionyl chloride", 10}, {"water", 90}});
    CHECK(says(*chloride.result("gas_release"), "does not last beside water"));
    // Other jurisdictions print no such statement, but the finding stays.
    const auto us = bottle({{"sodium metabisulfite", 10}, {"water", 90}}, MixtureRegime::us);
    CHECK(us.label.supplemental.empty());
    CHECK(us.result("gas_release")->supplemental == std::vector<std::string>{"EUH031"});
}

TEST_CASE("dry skin is said of solvents that do no worse to skin") {
    CHECK(bottle("acetone").label.supplemental == std::vector<std::string>{"EUH066"});
    CHECK(bottle({{"acetone", 50}, {"toluene", 50}}).label.supplemental.empty()); // irritates already
    CHECK(bottle({{"acetone", 10}, {"water", 90}}).label.supplemental.empty());
}

TEST_CASE("a neat substance keeps the physical class of its entry") {
    CHECK(found(bottle("tert-butanol"), "flammable_liquid") == "Flam. Liq. 2"); // though it melts at 25 degC
    CHECK(found(bottle("potassium permanganate"), "oxidising") == "Ox. Sol. 2");
    CHECK(found(bottle("lithium aluminium hydride"), "water_reactive") == "Water-react. 1");
    CHECK(found(bottle("oxygen"), "oxidising") == "Ox. Gas 1");
    CHECK(found(bottle("petroleum ether"), "flammable_liquid") == "Flam. Liq. 2"); // by its suppliers' class
}

TEST_CASE("formic acid is a flammable liquid above 85 % only") {
    // CLP Annex VI, 607-001-00-0: above 85 % (read in the catalogue's source).
    const auto at = [](double percent) {
        return bottle({{"formic acid", percent}, {"water", 100 - percent}});
    };
    CHECK(found(at(85.1), "flammable_liquid") == "Flam. Liq. 3");
    CHECK(found(at(85), "flammable_liquid") == "");
}
