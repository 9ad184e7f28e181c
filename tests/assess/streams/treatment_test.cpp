// SPDX-License-Identifier: MIT
// What is done with a stream before it goes anywhere: quenched, destroyed, neutralised, vented, parted.
#include "stream_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

TEST_CASE("an organic container takes no strong acid or base before it is neutralised") {
    const Decision acid =
        decide(mmol({{"ethanol", 500}, {"water", 500}, {"hydrogen bromide", 10}}), us_rules());
    CHECK(acid.kind == ContainerKind::flammable);
    CHECK(acid.needs(Treatment::Kind::add_base));
    const Decision base =
        decide(mmol({{"ethanol", 500}, {"water", 500}, {"sodium hydroxide", 10}}), us_rules());
    CHECK(base.needs(Treatment::Kind::add_acid));
}

TEST_CASE("an oxidiser is quenched first, a metal goes to the metals, sulfite never into acid") {
    const Decision peroxide = decide(grams({{"water", 97}, {"hydrogen peroxide", 3}}), us_rules());
    CHECK(peroxide.needs(Treatment::Kind::quench));
    CHECK(holds(peroxide.first[0].words, "until then into the container for oxidiser awaiting its quench"));
    CHECK_FALSE(peroxide.vent.empty());
    const Decision copper =
        decide(grams({{"water", 99}, {"copper(II) sulfate pentahydrate", 1}}), us_rules());
    CHECK(copper.kind == ContainerKind::metal);
    CHECK(holds(copper.summary, "Cu"));
    CHECK(decide(grams({{"water", 1000}, {"copper(II) sulfate pentahydrate", 0.03}}), us_rules()).kind !=
          ContainerKind::metal); // 7.6 mg of copper in a kilogram
    const Decision organic_metal =
        decide(grams({{"toluene", 99}, {"copper(II) acetate (anhydrous)", 1}}), us_rules());
    CHECK(organic_metal.kind == ContainerKind::flammable);
    CHECK(holds(organic_metal.goes_to, "marked \"metal\""));
    const Decision sulfite =
        decide(grams({{"water", 98}, {"sodium hydrogensulfite", 1}, {"hydrogen chloride", 1}}), us_rules());
    CHECK(sulfite.kind == ContainerKind::aqueous_neutral);
    CHECK(sulfite.needs(Treatment::Kind::add_base));
    CHECK(any_holds(sulfite.vent, "sulfur dioxide"));
}

// The window of pH 6 to 9 is read (Rutgers, University of Washington); acetic acid, pKa 4.76 (remembered), is
// below it.
TEST_CASE("base goes to the weak acid too where the container is the neutral one or sulfite is left") {
    const auto sulfite_beside = [](const char* more, double mmol_of_it) {
        return decide(mmol({{"water", 5000},
                            {"sodium hydrogensulfite", 2},
                            {"hydrogen bromide", 5},
                            {"acetic acid", 100},
                            {more, mmol_of_it}}),
                      us_rules());
    };
    const Decision neutral = sulfite_beside("sodium chloride", 1);
    CHECK(neutral.kind == ContainerKind::aqueous_neutral);
    REQUIRE(neutral.needs_base_for_weak_acid());
    CHECK(neutral.first.back().moles == doctest::Approx(0.1));
    CHECK(holds(neutral.first.back().words, "base for 100 mmol weak acid too, until paper shows pH 6 to 9"));
    CHECK(any_holds(neutral.vent, "no more gas comes"));
    const Decision burns = sulfite_beside("ethanol", 3000);
    CHECK(burns.kind == ContainerKind::flammable);
    CHECK(burns.needs(Treatment::Kind::add_base));
    // Acetic acid of 1 mol/L has pH 2.4; hydrogen sulfite, pKa 1.8 (both remembered), is then a fifth sulfur
    // dioxide.
    REQUIRE(burns.needs_base_for_weak_acid());
    CHECK(burns.first.back().moles == doctest::Approx(0.1));
    const Decision without_sulfite =
        decide(mmol({{"water", 5000}, {"hydrogen bromide", 5}, {"acetic acid", 100}, {"ethanol", 3000}}),
               us_rules());
    CHECK(without_sulfite.kind == ContainerKind::flammable);
    CHECK_FALSE(without_sulfite.needs_base_for_weak_acid());
    const Decision acidic = decide(mmol({{"water", 5000}, {"acetic acid", 100}}), us_rules());
    CHECK(acidic.kind == ContainerKind::aqueous_acidic);
    CHECK(acidic.first.empty());
    // Sulfite in one reading keeps both out of the acid container.
    CHECK(join_readings(acidic, neutral).kind == ContainerKind::aqueous_neutral);
    CHECK(join_readings(neutral, acidic).kind == ContainerKind::aqueous_neutral);
}

TEST_CASE("two layers are parted first") {
    const Decision layers = decide(grams({{"water", 90}, {"dichloromethane", 10}}), us_rules());
    CHECK(layers.needs(Treatment::Kind::part_layers));
}

TEST_CASE("what reacts with water is destroyed first, but not where water has done it") {
    const Decision anhydride = decide(grams({{"acetic anhydride", 10}, {"toluene", 90}}), us_rules());
    CHECK(anhydride.kind == ContainerKind::flammable);
    CHECK(anhydride.needs(Treatment::Kind::destroy));
    const Decision water = decide(grams({{"aluminium chloride (anhydrous)", 3}, {"water", 90}}), us_rules());
    CHECK(water.kind == ContainerKind::aqueous_acidic);
    CHECK_FALSE(water.needs(Treatment::Kind::destroy));
}

// Common practice, no source: what goes into what.
TEST_CASE("alkoxide, anhydride, hydride and alkali metal are each destroyed in their own way") {
    const auto first = [](const char* name) {
        const Decision decision = decide(grams({{name, 10}, {"toluene", 90}}), us_rules());
        return decision.first.empty() ? decision.goes_to : decision.first.at(0).words;
    };
    CHECK(holds(first("sodium ethoxide"), "into cold stirred ethanol or water, then dilute acid to neutral"));
    CHECK(holds(first("acetic anhydride"), "into stirred ice-water, base only after that"));
    CHECK(holds(first("maleic anhydride"), "into stirred ice-water, base only after that"));
    CHECK(holds(first("lithium aluminium hydride"), "under inert gas"));
    CHECK(holds(first("thionyl chloride"), "ice-water or base"));
    const Decision borohydride = decide(grams({{"sodium borohydride", 2}, {"toluene", 90}}), us_rules());
    REQUIRE(borohydride.first.size() == 1); // its own equation, and no second advice beside it
    CHECK(holds(borohydride.first[0].words, "destroy the borohydride first"));
}

TEST_CASE("acid too strong for the bench gets a bottle of its own, and nothing is done to it before") {
    // 10 g HBr (124 mmol) in about 25 mL: near 5 mol/L, above the line of 3.
    const Decision strong =
        decide(grams({{"hydrogen bromide", 10}, {"acetic acid", 25}, {"bromine", 1}}), us_rules());
    CHECK(strong.outcome == Decision::Outcome::own_bottle);
    CHECK(strong.goes_to == "own bottle, labelled");
    CHECK(holds(strong.summary, "too strong to be neutralised at the bench"));
    CHECK(strong.first.empty());
    CHECK(reason(strong, "too strong") != nullptr);
    CHECK_FALSE(strong.ask.empty());
    // 1 g in as much is neutralised; and a container for acid takes the strong one as it is.
    CHECK(decide(grams({{"hydrogen bromide", 1}, {"acetic acid", 25}}), us_rules())
              .needs(Treatment::Kind::add_base));
    CHECK(decide(grams({{"hydrogen chloride", 30}, {"water", 70}}), us_rules()).kind ==
          ContainerKind::aqueous_acidic);
    // A reading that would be neutralised adds nothing to one that is stopped.
    const Decision weak = decide(grams({{"hydrogen bromide", 1}, {"acetic acid", 25}}), us_rules());
    CHECK(join_readings(strong, weak).first.empty());
    CHECK(join_readings(weak, strong).outcome == Decision::Outcome::own_bottle);
    CHECK(join_readings(weak, strong).first.empty());
}

// Hazards by CLP Annex VI: carbon monoxide H220 and H331, hydrogen H220 (read). That gas leaves before the
// container: common practice, no source.
TEST_CASE("a gas in a liquid leaves first, with its hazard, and what is an acid in water stays") {
    const Decision monoxide = decide(grams({{"toluene", 50}, {"carbon monoxide", 2.8}}), us_rules());
    CHECK(monoxide.kind == ContainerKind::flammable);
    REQUIRE(monoxide.needs(Treatment::Kind::let_gas_leave));
    CHECK(holds(monoxide.first[0].words,
                "let the 2.8 g carbon monoxide leave first (toxic, flammable): in the "
                "hood and through a trap or scrubber that takes it, ask"));
    CHECK(any_holds(monoxide.vent, "carbon monoxide may still come out"));
    const Decision hydrogen = decide(grams({{"ethanol", 50}, {"hydrogen", 0.2}}), us_rules());
    REQUIRE(hydrogen.needs(Treatment::Kind::let_gas_leave));
    CHECK(
        holds(hydrogen.first[0].words, "hydrogen leave first (flammable): in the hood, away from any spark"));
    const Decision nitrogen = decide(grams({{"ethanol", 50}, {"nitrogen", 0.2}}), us_rules());
    CHECK(nitrogen.first[0].words == "let the 0.20 g nitrogen leave first: in the hood");
    for (const char* taken_up : {"hydrogen chloride", "ammonia"}) {
        INFO(taken_up);
        CHECK_FALSE(
            decide(grams({{"water", 90}, {taken_up, 2}}), us_rules()).needs(Treatment::Kind::let_gas_leave));
    }
    // A stop says it too: the gas leaves before the bottle of its own.
    const Decision cyanide =
        decide(grams({{"water", 90}, {"sodium cyanide", 1}, {"carbon monoxide", 0.1}}), us_rules());
    CHECK(cyanide.outcome == Decision::Outcome::own_bottle);
    CHECK(cyanide.needs(Treatment::Kind::let_gas_leave));
}
