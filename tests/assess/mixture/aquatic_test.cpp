// SPDX-License-Identifier: MIT
// Hazard to water. M-factors by toxicity: CLP Annex I, Table 4.1.3 (memory); cut-offs: 4.1.3.1 (read);
// additivity of toxicity: read in ADR 2.2.9.1.10.4.5.
#include "mixture_case.hpp"

#include "assess/mixture/aquatic_ingredient.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;
using doctest::Approx;

TEST_CASE("category and M-factor of a toxicity, decade by decade") {
    struct Row {
        AquaticKind kind;
        double toxicity;
        bool rapid;
        int category;
        double m;
    };
    const auto acute = AquaticKind::acute, chronic = AquaticKind::chronic;
    const Row rows[] = {
        {acute, 100, false, 3, 1},     {acute, 10.1, false, 3, 1},     {acute, 10, false, 2, 1},
        {acute, 1.01, false, 2, 1},    {acute, 1, false, 1, 1},        {acute, 0.11, false, 1, 1},
        {acute, 0.1, false, 1, 10},    {acute, 0.011, false, 1, 10},   {acute, 0.01, false, 1, 100},
        {acute, 0.002, false, 1, 100}, {acute, 0.001, false, 1, 1000}, {chronic, 1, false, 2, 1},
        {chronic, 0.1, false, 1, 1},   {chronic, 0.011, false, 1, 1},  {chronic, 0.01, false, 1, 10},
        {chronic, 1, true, 3, 1},      {chronic, 0.1, true, 2, 1},     {chronic, 0.01, true, 1, 1},
        {chronic, 0.001, true, 1, 10},
    };
    for (const Row& row : rows) {
        CAPTURE(row.toxicity);
        const auto found = aquatic_class(row.kind, row.toxicity, row.rapid);
        REQUIRE(found.has_value());
        CHECK(found->category == row.category);
        CHECK(found->m_factor == Approx(row.m));
    }
    CHECK(!aquatic_class(acute, 101, false));
    CHECK(!aquatic_class(chronic, 1.1, false));
    CHECK(!aquatic_class(chronic, 1.1, true));
}

TEST_CASE("an M-factor lowers the cut-off of its ingredient") {
    const auto judged = [](double percent) {
        Substance poison = liquid("poison", {"Aquatic Acute 1"});
        poison.ghs.front().m_factor = 10000;
        return Mixed().add(poison, percent).judged();
    };
    CHECK(found(judged(0.0025), "aquatic_acute") == "Aquatic Acute 1"); // 0.0025 x 10000 = 25
    CHECK(judged(0.00001).result("aquatic_acute")->tests.size() == 1);  // 0.1 / 10000
    CHECK(judged(0.0000099).result("aquatic_acute")->tests.empty());
    CHECK(Mixed().of("Aquatic Chronic 2", 0.99).judged().result("aquatic_chronic")->tests.empty());
}

TEST_CASE("a missing M-factor is 1 and said, unless a toxicity tells it") {
    const auto plain = Mixed().of("Aquatic Acute 1", 10).judged();
    CHECK(all_lines(*plain.result("aquatic_acute")).find("no M-factor") != std::string::npos);
    IngredientFacts facts;
    facts.aquatic.acute_mg_per_litre = 0.05; // M = 10
    const auto known = Mixed().add(liquid("known", {"Aquatic Acute 1"}), 2.5, facts).judged();
    CHECK(found(known, "aquatic_acute") == "Aquatic Acute 1");
}

TEST_CASE("each M-factor in its own sum; chronic category 4 has none") {
    Substance poison = liquid("poison", {"Aquatic Acute 1", "Aquatic Chronic 1"});
    poison.ghs[0].m_factor = 100;
    poison.ghs[1].m_factor = 10;
    const auto judged = Mixed().add(poison, 0.25).judged();
    CHECK(judged.result("aquatic_acute")->tests.front().value == Approx(25));
    CHECK(judged.result("aquatic_chronic")->tests.front().value == Approx(2.5));
    CHECK(statements(judged) == "H400 H411"); // 10 x 2.5 = 25
    const auto four = Mixed().add(poison, 0.01).of("Aquatic Chronic 4", 24.98).judged();
    CHECK(found(four, "aquatic_chronic") == ""); // 0.01 + 24.98; with M it would be 25.08
    CHECK(found(Mixed().add(poison, 0.02).of("Aquatic Chronic 4", 24.98).judged(), "aquatic_chronic") ==
          "Aquatic Chronic 4");
}

TEST_CASE("ingredients of which only the toxicity is known enter as one") {
    IngredientFacts first, second;
    first.aquatic.acute_mg_per_litre = 1;
    second.aquatic.acute_mg_per_litre = 0.1;
    // 30 % / (20 % / 1 + 10 % / 0.1) = 0.25 mg/L: category 1, M 1, 30 % >= 25 %
    const auto judged = Mixed().add(liquid("a"), 20, first).add(liquid("b"), 10, second).judged();
    CHECK(found(judged, "aquatic_acute") == "Aquatic Acute 1");
    CHECK(judged.result("aquatic_acute")->tests.front().value == Approx(30));
    // Chronic, not rapidly degradable: 10 % / (10 % / (0.1 x 0.05)) = 0.005 mg/L: category 1, M 1
    IngredientFacts slow;
    slow.aquatic.chronic_mg_per_litre = 0.05;
    const auto chronic = Mixed().add(liquid("c"), 10, slow).judged();
    CHECK(found(chronic, "aquatic_chronic") == "Aquatic Chronic 2"); // 10 x 10 = 100
    slow.aquatic.rapidly_degradable = true; // 0.05 mg/L: category 2; 10 x 10 = 100 for category 3
    CHECK(found(Mixed().add(liquid("c"), 10, slow).judged(), "aquatic_chronic") == "Aquatic Chronic 3");
}

TEST_CASE("the share of unknown hazard to water is stated") {
    Substance unknown = liquid("unknown");
    unknown.assessed = false;
    const auto judged = Mixed().add(unknown, 7).of("Aquatic Chronic 2", 30).judged();
    CHECK(judged.result("aquatic_chronic")->unknown_percent == Approx(7));
    IngredientFacts facts;
    facts.aquatic.acute_mg_per_litre = 500;
    CHECK(Mixed().add(unknown, 7, facts).judged().result("aquatic_acute")->unknown_percent == 0);
}

TEST_CASE("the US rule has no classes for the environment and says so") {
    const auto judged = Mixed().of("Aquatic Acute 1", 90).of("Ozone 1", 5).judged(MixtureRegime::us);
    for (const char* endpoint : {"aquatic_acute", "aquatic_chronic", "ozone"})
        CHECK(judged.result(endpoint)->outcome == MixtureOutcome::not_covered);
    CHECK(statements(judged) == "");
}
