// SPDX-License-Identifier: MIT
// pKa order after any textbook; the amounts are worked by hand.
#include "assess/streams/pairing.hpp"
#include "chemistry/element.hpp"
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

PairedComposition pair(const Composition& composition) {
    return pair_acids_and_bases(composition, us_rules().acid_base, catalogue());
}

/// g of every element on both sides, largest relative difference.
double element_error(const Composition& before, const PairedComposition& after) {
    double worst = 0;
    for (int element = 1; element < 100; ++element) {
        const auto weigh = [&](const Composition& composition) {
            double sum = 0;
            for (const Portion& portion : composition.portions())
                sum += portion.moles() * atoms_of(portion.substance->formula, element);
            return sum;
        };
        const double in = weigh(before), out = weigh(after.composition) + weigh(after.gas);
        if (in + out > 0) worst = std::max(worst, std::abs(in - out) / std::max(in, out));
    }
    return worst;
}

} // namespace

TEST_CASE("hydrogen bromide beside acetate is acetic acid and bromide") {
    const Composition before =
        mmol({{"hydrogen bromide", 5}, {"sodium acetate (anhydrous)", 8}, {"water", 500}});
    const PairedComposition after = pair(before);
    CHECK(mmol_of(after.composition, "acetic acid") == doctest::Approx(5));
    CHECK(mmol_of(after.composition, "sodium bromide") == doctest::Approx(5));
    CHECK(mmol_of(after.composition, "sodium acetate (anhydrous)") == doctest::Approx(3));
    CHECK(mmol_of(after.composition, "hydrogen bromide") == 0);
    REQUIRE(after.steps.size() == 1);
    CHECK(after.steps[0].moles == doctest::Approx(0.005));
    CHECK(after.steps[0].words == "hydrogen bromide gives its proton to acetate");
    CHECK(holds(after.steps[0].equation, " -> "));
    CHECK(element_error(before, after) < 1e-12);
}

TEST_CASE("the strongest acid goes to the strongest base first") {
    // 10 mmol hydroxide: 4 go to hydrogen bromide, 6 to acetic acid, 1 acetic acid stays.
    const PairedComposition after =
        pair(mmol({{"hydrogen bromide", 4}, {"acetic acid", 7}, {"sodium hydroxide", 10}}));
    CHECK(mmol_of(after.composition, "sodium bromide") == doctest::Approx(4));
    CHECK(mmol_of(after.composition, "sodium acetate (anhydrous)") == doctest::Approx(6));
    CHECK(mmol_of(after.composition, "acetic acid") == doctest::Approx(1));
    CHECK(mmol_of(after.composition, "sodium hydroxide") == 0);
    CHECK(mmol_of(after.composition, "water") == doctest::Approx(10));
}

TEST_CASE("both protons of sulfuric acid go, one after the other") {
    const PairedComposition after = pair(mmol({{"sulfuric acid", 3}, {"potassium hydroxide", 5}}));
    CHECK(mmol_of(after.composition, "potassium sulfate") == doctest::Approx(2));
    CHECK(mmol_of(after.composition, "potassium hydrogensulfate") == doctest::Approx(1));
}

TEST_CASE("two cations share a sulfate half and half") {
    const PairedComposition after = pair(mmol({{"sodium hydrogensulfate", 2}, {"potassium acetate", 2}}));
    CHECK(mmol_of(after.composition, "sodium sulfate (anhydrous)") == doctest::Approx(1));
    CHECK(mmol_of(after.composition, "potassium sulfate") == doctest::Approx(1));
    CHECK(mmol_of(after.composition, "acetic acid") == doctest::Approx(2));
}

TEST_CASE("carbonate gives carbon dioxide as gas, and sulfite sulfur dioxide") {
    const Composition before =
        mmol({{"hydrogen chloride", 10}, {"sodium carbonate", 4}, {"sodium hydrogensulfite", 1}});
    const PairedComposition after = pair(before);
    CHECK(mmol_of(after.gas, "carbon dioxide") == doctest::Approx(4));
    CHECK(mmol_of(after.gas, "sulfur dioxide") == doctest::Approx(1));
    CHECK(mmol_of(after.composition, "hydrogen chloride") == doctest::Approx(1));
    CHECK(element_error(before, after) < 1e-12);
}

TEST_CASE("potassium carbonate takes two protons at once, for nobody keeps its hydrogencarbonate") {
    const PairedComposition after = pair(mmol({{"hydrogen bromide", 6}, {"potassium carbonate", 3}}));
    CHECK(mmol_of(after.composition, "potassium bromide") == doctest::Approx(6));
    CHECK(mmol_of(after.gas, "carbon dioxide") == doctest::Approx(3));
}

TEST_CASE("ammonium gives its proton to hydroxide, and ammonia takes one from hydrogen bromide") {
    CHECK(mmol_of(pair(mmol({{"ammonium chloride", 2}, {"sodium hydroxide", 3}})).composition, "ammonia") ==
          doctest::Approx(2));
    CHECK(mmol_of(pair(mmol({{"hydrogen bromide", 2}, {"ammonia", 3}})).composition, "ammonium bromide") ==
          doctest::Approx(2));
}

TEST_CASE("what strong acids leave behind takes no proton, and near neighbours stay as they are") {
    CHECK(pair(mmol({{"hydrogen bromide", 2}, {"potassium nitrate", 3}})).steps.empty());
    CHECK(pair(mmol({{"sodium hydrogensulfate", 2}, {"sodium hydrogensulfite", 3}})).steps.empty());
    CHECK(pair(mmol({{"acetic acid", 2}, {"sodium bromide", 3}})).steps.empty());
}

TEST_CASE("a pair whose salt has no entry is named, not booked") {
    const PairedComposition after = pair(mmol({{"phenol", 2}, {"sodium hydroxide", 3}}));
    CHECK(after.steps.empty());
    REQUIRE(after.left_unpaired.size() == 1);
    CHECK(after.left_unpaired[0] == "phenol with sodium hydroxide");
}

TEST_CASE("every row of the table stands in the catalogue, and its acids and bases count as written") {
    const AcidBaseTable& table = us_rules().acid_base;
    for (const AcidBaseSubstance& row : table.substances) {
        INFO(row.id);
        REQUIRE(catalogue().find_substance(row.id) != nullptr);
        CHECK(catalogue().find_substance(row.id)->id == row.id);
    }
    for (const HydrolysingAcid& row : table.hydrolysing)
        CHECK_MESSAGE(catalogue().find_substance(row.id) != nullptr, row.id);
    const AcidBaseLeft left = count_acid_and_base(
        mmol({{"sulfuric acid", 1}, {"acetic acid", 2}, {"sodium hydroxide", 4}, {"sodium carbonate", 8}}),
        table);
    CHECK(left.strong_acid == doctest::Approx(0.002));
    CHECK(left.weak_acid == doctest::Approx(0.002));
    CHECK(left.strong_base == doctest::Approx(0.004));
    CHECK(left.weak_base == doctest::Approx(0.016));
}

TEST_CASE("pairing keeps every element, ends, and is settled after one pass, on 3000 random mixtures") {
    const std::vector<AcidBaseSubstance>& all = us_rules().acid_base.substances;
    std::mt19937 random(7);
    std::uniform_int_distribution<std::size_t> pick(0, all.size() - 1);
    std::uniform_real_distribution<double> amount(0.1, 10);
    int reacted = 0;
    for (int trial = 0; trial < 3000; ++trial) {
        Composition before;
        for (int i = 0; i < 5; ++i) {
            const Substance& one = substance(all[pick(random)].id);
            before.add(one, amount(random) * one.molar_mass / 1000);
        }
        const PairedComposition after = pair(before);
        reacted += after.steps.empty() ? 0 : 1;
        REQUIRE(element_error(before, after) < 1e-9);
        for (const Portion& portion : after.composition.portions())
            REQUIRE(portion.grams > 0);
        const PairedComposition again = pair(after.composition);
        double moved = 0;
        for (const PairingStep& step : again.steps)
            moved += step.moles;
        REQUIRE(moved < 1e-9);
    }
    CHECK(reacted > 1000);
}
