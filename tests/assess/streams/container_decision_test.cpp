// SPDX-License-Identifier: MIT
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

using Outcome = Decision::Outcome;

const Reason* reason(const Decision& decision, const std::string& what) {
    for (const Reason& one : decision.reasons)
        if (one.what == what) return &one;
    return nullptr;
}

} // namespace

// 40 CFR 261.21: below 24 % alcohol by volume a watery solution is exempt from the flash-point line of 60
// degC (read). HP 3 of the Waste Framework Directive: flash point below 60 degC, no such exemption
// (remembered).
TEST_CASE("aqueous ethanol on both sides of the lines of both jurisdictions") {
    struct Case {
        double percent;
        ContainerKind us, eu;
    };
    for (const Case& one : {Case{2, ContainerKind::aqueous_neutral, ContainerKind::aqueous_neutral},
                            Case{14, ContainerKind::aqueous_neutral, ContainerKind::flammable},
                            Case{23.9, ContainerKind::aqueous_neutral, ContainerKind::flammable},
                            Case{24.1, ContainerKind::flammable, ContainerKind::flammable},
                            Case{37, ContainerKind::flammable, ContainerKind::flammable}}) {
        INFO(one.percent << " % by volume");
        CHECK(decide(spirit(one.percent), us_rules()).kind == one.us);
        CHECK(decide(spirit(one.percent), eu_rules()).kind == one.eu);
    }
    const Decision exempt = decide(spirit(14), us_rules());
    REQUIRE(reason(exempt, "alcohol line") != nullptr);
    CHECK(*reason(exempt, "alcohol line")->value == doctest::Approx(14));
    CHECK(*reason(exempt, "alcohol line")->line == doctest::Approx(24));
    CHECK(holds(reason(exempt, "alcohol line")->source, "40 CFR 261.21"));
    CHECK(reason(decide(spirit(14), eu_rules()), "alcohol line") == nullptr);
}

TEST_CASE("the exemption is for alcohol alone and for water") {
    // Acetone burns by itself: 5 % in water flashes below 60 degC.
    const Decision acetone = decide(grams({{"acetone", 8}, {"ethanol", 4}, {"water", 100}}), us_rules());
    CHECK(acetone.kind == ContainerKind::flammable);
    CHECK(holds(reason(acetone, "alcohol line")->words, "not alcohol alone"));
}

TEST_CASE("the halogen threshold decides between two organic bottles, at the edge too") {
    const auto with = [](double percent) {
        return decide(grams({{"ethyl acetate", 100 - percent}, {"dichloromethane", percent}}), us_rules());
    };
    CHECK(with(0.99).kind == ContainerKind::flammable);
    CHECK(with(1.0).kind == ContainerKind::halogenated);
    CHECK(with(50).kind == ContainerKind::halogenated);
    CHECK(decide(grams({{"ethanol", 20}, {"tetrabutylammonium bromide", 5}}), us_rules()).kind ==
          ContainerKind::flammable); // an ionic bromide is no halogenated organic
    CHECK(holds(with(50).summary, "dichloromethane"));
}

TEST_CASE("acid, base and neither, at the lines in mol a litre") {
    const auto water_with = [](const char* name, double mmol_per_litre) {
        Composition made = grams({{"water", 997}});
        made.add(substance(name), mmol_per_litre / 1000 * substance(name).molar_mass);
        return decide(made, us_rules());
    };
    CHECK(water_with("hydrogen chloride", 100).kind == ContainerKind::aqueous_acidic);
    CHECK(reason(water_with("hydrogen chloride", 10.1), "corrosive") != nullptr);
    CHECK(reason(water_with("hydrogen chloride", 9.8), "corrosive") == nullptr);
    CHECK(water_with("acetic acid", 50).kind == ContainerKind::aqueous_acidic);
    CHECK(water_with("sodium hydroxide", 50).kind == ContainerKind::aqueous_basic);
    CHECK(reason(water_with("sodium hydroxide", 32), "corrosive") != nullptr);
    CHECK(water_with("sodium hydrogencarbonate", 50).kind == ContainerKind::aqueous_basic);
    CHECK(water_with("sodium chloride", 500).kind == ContainerKind::aqueous_neutral);
    CHECK(water_with("hydrogen chloride", 0.1).kind == ContainerKind::aqueous_neutral);
    CHECK(holds(water_with("hydrogen chloride", 100).summary, "no pH is predicted"));
}

TEST_CASE("acid and base that meet in the stream are paired before it is sorted") {
    CHECK(
        decide(mmol({{"water", 5000}, {"hydrogen chloride", 5}, {"sodium hydroxide", 5}}), us_rules()).kind ==
        ContainerKind::aqueous_neutral);
    const StreamDescription stream =
        describe_stream(mmol({{"water", 5000}, {"hydrogen bromide", 5}, {"sodium acetate (anhydrous)", 9}}),
                        StreamKind::liquid, 0, us_rules().description());
    CHECK(stream.acid_class == AcidClass::weak_acid);
    CHECK(stream.acid_base.strong_acid == 0);
}

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
    CHECK(holds(peroxide.first[0].words, "until then oxidiser awaiting its quench"));
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
TEST_CASE("a neutral container takes base for the weak acid too, another container does not") {
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
    CHECK_FALSE(burns.needs_base_for_weak_acid());
    const Decision acidic = decide(mmol({{"water", 5000}, {"acetic acid", 100}}), us_rules());
    CHECK(acidic.kind == ContainerKind::aqueous_acidic);
    CHECK(acidic.first.empty());
    // Sulfite in one reading keeps both out of the acid container.
    CHECK(join_readings(acidic, neutral).kind == ContainerKind::aqueous_neutral);
    CHECK(join_readings(neutral, acidic).kind == ContainerKind::aqueous_neutral);
}

TEST_CASE("stops: cyanide, azide by group, strong nitric acid, hydrofluoric acid, and what nobody assigned") {
    const Decision cyanide = decide(grams({{"water", 1000}, {"sodium cyanide", 0.1}}), us_rules());
    CHECK(cyanide.outcome == Outcome::own_bottle);
    CHECK(holds(cyanide.goes_to, "cyanide"));
    CHECK(holds(cyanide.ask, "safety office"));
    CHECK(decide(grams({{"water", 90}, {"hydrogen fluoride", 1}}), us_rules()).outcome ==
          Outcome::own_bottle);
    const Decision nitric = decide(grams({{"water", 30}, {"nitric acid", 70}}), us_rules());
    CHECK(nitric.outcome == Outcome::own_bottle);
    CHECK_FALSE(nitric.vent.empty());
    CHECK(decide(grams({{"water", 98}, {"nitric acid", 2}}), us_rules()).kind ==
          ContainerKind::aqueous_acidic);
    Substance stranger = substance("toluene");
    stranger.id = stranger.name = "stranger";
    stranger.cas.clear();
    Composition with_stranger = grams({{"toluene", 50}});
    with_stranger.add(stranger, 10);
    const Decision unknown = decide(with_stranger, us_rules());
    CHECK(unknown.outcome == Outcome::own_bottle);
    CHECK(holds(unknown.summary, "not assessed: stranger"));
}

TEST_CASE("a flash point outside the method stops, when it would decide") {
    const Decision unknown = decide(grams({{"water", 80}, {"petroleum ether", 20}}), us_rules());
    CHECK(unknown.outcome == Outcome::own_bottle);
    CHECK(holds(unknown.goes_to, "have the flash point measured"));
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
    CHECK(strong.outcome == Outcome::own_bottle);
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
    CHECK(join_readings(weak, strong).outcome == Outcome::own_bottle);
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
    CHECK(cyanide.outcome == Outcome::own_bottle);
    CHECK(cyanide.needs(Treatment::Kind::let_gas_leave));
}

TEST_CASE("gas and vapour go to no container") {
    CHECK(decide(grams({{"nitrogen", 1}}), us_rules(), StreamKind::gas).outcome == Outcome::air);
    CHECK(decide(grams({{"hydrogen chloride", 1}}), us_rules(), StreamKind::gas).outcome == Outcome::trap);
    const Decision much = decide(grams({{"ethanol", 100}}), us_rules(), StreamKind::vapour);
    CHECK(much.outcome == Outcome::air);
    CHECK(reason(much, "much vapour") != nullptr);
}

TEST_CASE("a drain is offered only where the house permits it, and only for what is neutral") {
    LocalRules permitted = shipped_local_rules(catalogue(), "US");
    CHECK_FALSE(permitted.drain_permitted);
    permitted.drain_permitted = true;
    const StreamRules rules(catalogue(), std::move(permitted));
    CHECK(reason(decide(grams({{"water", 90}, {"sodium chloride", 5}}), rules), "drain") != nullptr);
    CHECK(reason(decide(grams({{"water", 90}, {"hydrogen chloride", 5}}), rules), "drain") == nullptr);
    CHECK(reason(decide(grams({{"water", 90}, {"sodium chloride", 5}}), us_rules()), "drain") == nullptr);
}

TEST_CASE("5000 random streams get a container or an explicit stop, with reasons, and never a promise") {
    const std::vector<const Substance*> all = catalogue().all_substances();
    std::mt19937 random(11);
    std::uniform_int_distribution<std::size_t> pick(0, all.size() - 1);
    std::exponential_distribution<double> amount(0.2);
    for (int trial = 0; trial < 5000; ++trial) {
        Composition made;
        for (int i = 0; i < 4; ++i) {
            const Substance& one = *all[pick(random)];
            if (one.has_formula()) made.add(one, amount(random));
        }
        if (trial % 2 == 0) made.add(substance("water"), 50);
        if (made.empty()) continue;
        const Decision decision = decide(made, trial % 3 == 0 ? eu_rules() : us_rules());
        REQUIRE((decision.outcome == Outcome::container || decision.outcome == Outcome::own_bottle));
        REQUIRE_FALSE(decision.goes_to.empty());
        REQUIRE_FALSE(decision.summary.empty());
        REQUIRE_FALSE(decision.reasons.empty());
        REQUIRE((decision.outcome != Outcome::own_bottle || !decision.ask.empty()));
        for (const Reason& one : decision.reasons)
            REQUIRE_FALSE(calls_anything_safe(one.words));
    }
}
