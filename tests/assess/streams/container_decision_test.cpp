// SPDX-License-Identifier: MIT
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <random>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

using Outcome = Decision::Outcome;

} // namespace

// 40 CFR 261.21: below 24 % alcohol by volume a watery solution is exempt from the flash-point line of 60
// degC (read). HP 3 of the Waste Framework Directive: flash point below 60 degC, no such exemption
// (remembered).
TEST_CASE("aqueous ethanol on both sides of the lines of both jurisdictions") {
    struct Case {
        double percent;
        ContainerKind us, eu;
    };
    for (const Case& one :
         {Case{2, ContainerKind::aqueous_neutral, ContainerKind::aqueous_neutral},
          Case{14, ContainerKind::aqueous_neutral, ContainerKind::flammable},
          Case{23.0, ContainerKind::aqueous_neutral, ContainerKind::flammable},
          // Volumes added up: 24 % of what is left when they have shrunk by 4 % (remembered).
          Case{23.1, ContainerKind::flammable, ContainerKind::flammable},
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
