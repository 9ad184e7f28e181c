// SPDX-License-Identifier: MIT
// Base and acid for what a quench and the route leave, stream by stream, for the container that each goes to.
#include "stream_case.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

TEST_CASE("A1 goes to the neutral container: base, gas and order count its acetic acid") {
    for (const StreamRules* rules : {&us_rules(), &eu_rules()}) {
        const WasteOf a1(a_route("A1"), *rules);
        REQUIRE(a1.stream("filtrate and washes").decision.kind == ContainerKind::aqueous_neutral);
        // 15.8 mmol strong acid and 122.3 mmol acetic acid: 138.1 mmol at 84.01 g/mol and 24.465 L/mol.
        CHECK(a1.quench().needed.acid == doctest::Approx(0.1381).epsilon(0.003));
        CHECK(a1.quench().needed.with("NaHCO3")->grams == doctest::Approx(11.60).epsilon(0.003));
        CHECK(a1.quench().needed.with("NaHCO3")->gas_litres == doctest::Approx(3.379).epsilon(0.003));
        CHECK(any_holds(a1.quench().order, "120 mmol weak acid takes 12 g sodium hydrogencarbonate and frees "
                                           "3.4 L carbon dioxide"));
        CHECK(any_holds(a1.stream("filtrate and washes").decision.vent, "no more gas comes"));
    }
}

// Acid frees sulfur dioxide and sulfur from thiosulfate (inorganic textbooks, remembered), weak acid slowly;
// so what base is to keep apart has no acid left beside it, in whatever container.
TEST_CASE(
    "base that keeps acid from thiosulfate is sized for the weak acid too, in an organic container as well") {
    const WasteOf a4(a_route("A4"), eu_rules()); // ethanol in water: burns by the EU rules
    const StreamAdvice& filtrate = a4.stream("filtrate and washes");
    REQUIRE(filtrate.decision.kind == ContainerKind::flammable);
    CHECK(filtrate.decision.needs_base_for_weak_acid());
    const QuenchPlan& plan = a4.quench();
    REQUIRE(plan.to_neutralise.size() == 1);
    CHECK(plan.strong.acid == 0);
    CHECK(plan.needed.acid == doctest::Approx(plan.to_neutralise[0].weak_acid));
    // 72 mmol at 84.01 g/mol and 24.465 L/mol
    CHECK(plan.needed.with("NaHCO3")->grams == doctest::Approx(0.072 * 84.01).epsilon(0.01));
    CHECK(any_holds(plan.order,
                    "72 mmol weak acid takes 6.1 g sodium hydrogencarbonate and frees 1.8 L carbon "
                    "dioxide; base before any acid, for thiosulfate is left"));
    CHECK_FALSE(any_holds(plan.order, "may stay"));
}

TEST_CASE("acid that an acid container takes needs no base, weak or strong") {
    const WasteOf g1("routes/acetylsalicylic-acid/G1.json", us_rules());
    REQUIRE(g1.stream("filtrate and washes").decision.kind == ContainerKind::aqueous_acidic);
    CHECK(g1.stream("filtrate and washes").nominal.acid_base.weak_acid > 0.05);
    CHECK(g1.quench().needed.acid == 0);
}

TEST_CASE("acid and base are corrected for the container that the stream goes to, not for its own sake") {
    // The acid of G1 and the base of H3 belong in an acid and a base container.
    const WasteOf g1("routes/acetylsalicylic-acid/G1.json", us_rules());
    CHECK(g1.stream("filtrate and washes").decision.kind == ContainerKind::aqueous_acidic);
    CHECK(g1.quench().order.empty());
    CHECK(g1.quench().strong.acid == 0);
    CHECK(g1.quench().spill_acid ==
          doctest::Approx(0.00735).epsilon(0.001).scale(0)); // 2 mol of the sulfuric acid
    const WasteOf h3("routes/4-chloro-4-methoxychalcone/H3.json", us_rules());
    for (const StreamAdvice& advice : h3.waste.streams) {
        INFO(advice.stream.title);
        CHECK(any_holds(h3.quench().order, advice.stream.name + ": ") ==
              (advice.decision.needs(Treatment::Kind::add_acid) ||
               advice.decision.needs(Treatment::Kind::add_base)));
    }
}

TEST_CASE("each stream is neutralised by its own acid in its own volume") {
    const WasteOf e3("routes/adipic-acid/E3.json", us_rules());
    // Peroxide of the unreacted reading and 1 mol acid from each of it; the wash is no part of the liquor.
    const std::vector<StreamToNeutralise>& streams = e3.quench().to_neutralise;
    REQUIRE(streams.size() == 2);
    CHECK(streams[0].stream == "filtrate and wash");
    CHECK(streams[0].liquid == doctest::Approx(e3.stream("filtrate and wash").largest_volume()));
    CHECK(streams[0].strong_acid + streams[1].strong_acid ==
          doctest::Approx(e3.quench().strong.acid).epsilon(1e-9));
    CHECK_FALSE(any_holds(e3.quench().order, "too strong"));
    CHECK(any_holds(e3.quench().order, "then the container (heavy metal)"));
}

TEST_CASE(
    "a stream that is too strong for the bench is told so in its decision and in the plan, and no more") {
    using namespace routeweigh::test;
    // 25 mmol HBr in a few mL of acetic acid, and 5 mmol bromine beside it.
    const Built pot(one_pot(
        "4-bromoacetanilide", "acetanilide", "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide",
        {charge("acetanilide", "25 mmol", "substrate"), charge("bromine", "30 mmol", "reagent"),
         charge("acetic acid", "4 g", "solvent")},
        {reaction("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide")},
        "\"dissolved\": [\"hydrogen bromide\"]"));
    const RouteWaste waste = assess_waste(pot.route, us_rules());
    REQUIRE(waste.streams.size() == 1);
    CHECK(waste.streams[0].decision.outcome == Decision::Outcome::own_bottle);
    const QuenchPlan& plan = waste.quenches.at(0);
    CHECK(plan.verdict == QuenchPlan::Verdict::none_planned);
    REQUIRE(plan.order.size() == 1);
    CHECK(holds(plan.order[0], "too strong to be neutralised at the bench; own bottle, labelled; ask"));
    CHECK(plan.strong.acid == 0);
    CHECK(plan.spill_acid > 0.025);
}

TEST_CASE("a planned quench is told also where what comes of it is too strong to be neutralised") {
    using namespace routeweigh::test;
    const Built pot(
        route("4-bromoacetanilide",
              {step("4-bromoacetanilide", "acetanilide",
                    "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide",
                    {stage("reaction",
                           {charge("acetanilide", "25 mmol", "substrate"),
                            charge("bromine", "30 mmol", "reagent"), charge("acetic acid", "4 g", "solvent")},
                           {reaction("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide")}),
                     stage("workup", {charge("sodium hydrogensulfite", "0.55 g", "quench")})},
                    "\"dissolved\": [\"hydrogen bromide\"]")}));
    const QuenchPlan plan = assess_waste(pot.route, us_rules()).quenches.at(0);
    CHECK(any_holds(plan.order, "the orange is gone"));
    CHECK(any_holds(plan.order, "then the container (own bottle, labelled)"));
    CHECK(any_holds(plan.order, "too strong to be neutralised at the bench"));
    CHECK_FALSE(any_holds(plan.order, "base, in portions"));
}

TEST_CASE("thiosulfate makes no acid of bromine, sulfite does") {
    const WasteOf a4(a_route("A4"), us_rules());
    CHECK(a4.quench().unreacted.acid_made == doctest::Approx(0).epsilon(1e-9));
    CHECK(any_holds(a4.quench().warnings, "to tetrathionate"));
}

// The equations: Br2 + 2 S2O3(2-) makes tetrathionate and no acid, cyclohexene takes up bromine and makes
// none.
TEST_CASE("what the quench makes and leaves is told of the quench that is planned") {
    for (const StreamRules* rules : {&us_rules(), &eu_rules()}) {
        const WasteOf a4(a_route("A4"), *rules);
        const Decision& thiosulfate = a4.stream("filtrate and washes").decision;
        CHECK(thiosulfate.needs(Treatment::Kind::quench));
        for (const Treatment& one : thiosulfate.first) {
            CHECK_FALSE(holds(one.words, "sulfite"));
            CHECK_FALSE(holds(one.words, "the quench makes 1.7 mmol"));
        }
        CHECK(any_holds(a4.quench().order, "before any acid, for thiosulfate is left"));
        for (const char* id : {"B1", "B2"}) {
            INFO(id);
            const WasteOf b(std::string("routes/2-3-dibromo-3-phenylpropanoic-acid/") + id + ".json", *rules);
            CHECK(b.stream("filtrate and washes").decision.needs(Treatment::Kind::quench));
            for (const StreamAdvice& advice : b.waste.streams)
                CHECK_FALSE(advice.decision.needs(Treatment::Kind::add_base));
            CHECK_FALSE(any_holds(b.quench().order, "sulfite"));
        }
    }
    // Hydrogensulfite as before: three acids for each bromine.
    const WasteOf a1(a_route("A1"), us_rules());
    bool told = false;
    for (const Treatment& one : a1.stream("filtrate and washes").decision.first)
        told = told || holds(one.words, "the quench makes 4.6 mmol acid and leaves sulfite");
    CHECK(told);
}
