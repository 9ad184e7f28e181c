// SPDX-License-Identifier: MIT
// The shipped routes: every stream sorted, every handout checked, every mismatch planted found.
#include "route/ledger.hpp"
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

const std::string a3 = "routes/4-bromoacetanilide/A3.json";

std::set<std::string> mismatches(const StreamRules& rules) {
    std::set<std::string> found;
    for (const std::string& path : shipped_routes()) {
        const WasteOf one(path, rules);
        for (const StreamAdvice* advice : one.waste.mismatches())
            found.insert(one.route->id + ": " + advice->stream.step_id + ": " + advice->stream.name);
    }
    return found;
}

} // namespace

TEST_CASE("every stream of every shipped route gets a container or an explicit outcome, with reasons") {
    int streams = 0;
    for (const StreamRules* rules : {&us_rules(), &eu_rules()})
        for (const std::string& path : shipped_routes()) {
            const WasteOf one(path, *rules);
            CHECK_FALSE(one.waste.streams.empty());
            for (const StreamAdvice& advice : one.waste.streams) {
                INFO(path << ": " << advice.stream.name);
                ++streams;
                CHECK_FALSE(advice.decision.goes_to.empty());
                CHECK((advice.decision.outcome != Decision::Outcome::container ||
                       advice.decision.kind.has_value()));
                CHECK((advice.decision.outcome == Decision::Outcome::nothing ||
                       !advice.decision.reasons.empty()));
                CHECK(advice.handout.verdict != HandoutFinding::Verdict::not_understood);
                CHECK(advice.nominal.not_assigned.empty());
                CHECK(advice.unreacted.not_assigned.empty());
                CHECK_FALSE(calls_anything_safe(advice.handout.words));
                for (const Meeting& meeting : advice.inside.within)
                    CHECK_FALSE(meeting.bases.empty());
            }
        }
    CHECK(streams > 100);
}

// Alarms of the routes as shipped, each true:
// A7a, acetonitrile in water burns and is no alcohol; D1a, cyanide held in the cake goes on into the mother
// liquor (4 g); D3a, 39 % ethanol by volume in the acidified filtrate. EU: no alcohol exemption, so A3 to A6
// and H3 as well.
TEST_CASE("alarms on the routes as shipped, under the US and the EU rules") {
    // B4 books all lost dibromide into the mother liquor, so its filtrate holds no halogen and much ethanol.
    const std::set<std::string> both{
        "A7a: bromination: filtrate and washes", "B4: bromine addition: filtrate and washes",
        "D1a-D2c-D3a: benzoin: mother liquor", "D1a-D2c-D3a: hydantoin: filtrate and wash",
        "D1b-D2c-D3a: hydantoin: filtrate and wash"};
    std::set<std::string> us = both, eu = both;
    // 11 % ethanol is exempt from the flash-point line there, and the handout says flammable.
    us.insert("G1: acetylation: mother liquor and rinse");
    CHECK(mismatches(us_rules()) == us);
    for (const char* id : {"A3", "A4", "A5", "A6"})
        eu.insert(std::string(id) + ": bromination: filtrate and washes");
    eu.insert("H3: condensation: filtrate and wash");
    eu.insert("convergent: condensation: filtrate and wash");
    CHECK(mismatches(eu_rules()) == eu);
}

TEST_CASE("the A3 filtrate, about 14 % ethanol by volume, stays aqueous in the US and burns in the EU") {
    const WasteOf us(a3, us_rules());
    const StreamAdvice& filtrate = us.stream("filtrate and washes");
    CHECK(filtrate.nominal.alcohol_by_volume == doctest::Approx(0.14).epsilon(0.03));
    CHECK(filtrate.decision.kind == ContainerKind::aqueous_neutral);
    CHECK(filtrate.handout.verdict == HandoutFinding::Verdict::agrees_after_treatment);
    CHECK(filtrate.decision.needs(Treatment::Kind::add_base));
    const WasteOf eu(a3, eu_rules());
    const StreamAdvice& burning = eu.stream("filtrate and washes");
    CHECK(burning.decision.kind == ContainerKind::flammable);
    CHECK(burning.handout.verdict == HandoutFinding::Verdict::differs);
    CHECK(holds(burning.handout.words,
                "filtrate and washes: 14 % ethanol by volume, screened flash point about 40 degC; "
                "handout says \"aqueous, halide-bearing\", should go to flammable "
                "non-halogenated"));
    CHECK(burning.decision.waste_code == "14 06 03*");
}

TEST_CASE("planted: a filtrate with 37 % ethanol by volume sent to the aqueous container") {
    // 20.1 g of spirit in place of 6.48 g, and a third less water for the drown-out.
    const WasteOf planted(a3, us_rules(),
                          {{"\"amount\": \"6.48 g\"", "\"amount\": \"20.1 g\""},
                           {"\"amount\": \"24.95 g\"", "\"amount\": \"18 g\""},
                           {"\"container\": \"aqueous, halide-bearing\"", "\"container\": \"aqueous\""}});
    const StreamAdvice& filtrate = planted.stream("filtrate and washes");
    CHECK(filtrate.nominal.alcohol_by_volume == doctest::Approx(0.37).epsilon(0.02));
    CHECK(filtrate.handout.verdict == HandoutFinding::Verdict::differs);
    INFO(filtrate.handout.words);
    CHECK(holds(filtrate.handout.words, "37 % ethanol by volume, screened flash point about"));
    CHECK(holds(filtrate.handout.words, "handout says \"aqueous\", should go to flammable non-halogenated"));
}

TEST_CASE("planted: every wrong container of a handout is caught") {
    const std::string right = "\"container\": \"halogenated organic\"";
    for (const char* wrong : {"aqueous", "non-halogenated organic", "heavy metal", "contaminated solids",
                              "drain", "aqueous, acidic", "solvent for recovery"}) {
        INFO(wrong);
        const WasteOf planted(a3, us_rules(), {{right, "\"container\": \"" + std::string(wrong) + "\""}});
        CHECK(planted.stream("mother liquor and rinse").handout.verdict == HandoutFinding::Verdict::differs);
    }
    const WasteOf strange(a3, us_rules(), {{right, "\"container\": \"bucket 7\""}});
    CHECK(strange.stream("mother liquor and rinse").handout.verdict ==
          HandoutFinding::Verdict::not_understood);
    const WasteOf silent(a3, us_rules(), {{"\"container\": \"halogenated organic\",", ""}});
    CHECK(silent.stream("mother liquor and rinse").handout.verdict == HandoutFinding::Verdict::none_named);
}

TEST_CASE("planted: on every stream of every shipped route, the name of any other container is caught") {
    int planted = 0;
    for (const StreamRules* rules : {&us_rules(), &eu_rules()})
        for (const std::string& path : shipped_routes()) {
            const WasteOf one(path, *rules);
            for (const StreamAdvice& advice : one.waste.streams) {
                if (advice.decision.outcome != Decision::Outcome::container &&
                    advice.decision.outcome != Decision::Outcome::own_bottle)
                    continue;
                for (const Container& other : rules->local.containers) {
                    RouteStream stream = advice.stream;
                    stream.handout = other.name;
                    const HandoutFinding finding =
                        compare_with_handout(stream, advice.decision, rules->local);
                    INFO(path << ": " << stream.name << " sent to " << other.name << ": " << finding.words);
                    const bool right = advice.decision.kind == other.kind;
                    CHECK((finding.verdict == HandoutFinding::Verdict::differs) == !right);
                    if (!right) ++planted;
                }
            }
        }
    CHECK(planted > 500);
}

TEST_CASE("both readings count: the mother liquor is halogenated only if the product was made and lost") {
    const WasteOf one(a3, us_rules());
    const StreamAdvice& liquor = one.stream("mother liquor and rinse");
    CHECK(liquor.nominal_decision.kind == ContainerKind::halogenated);
    CHECK(liquor.unreacted_decision.kind == ContainerKind::flammable);
    CHECK(liquor.decision.kind == ContainerKind::halogenated);
    bool told = false;
    for (const Reason& reason : liquor.decision.reasons)
        told = told || reason.what == "other reading";
    CHECK(told);
    CHECK(one.stream("filtrate and washes")
              .decision.needs(Treatment::Kind::quench)); // of the unreacted reading
    CHECK_FALSE(one.stream("filtrate and washes").nominal_decision.needs(Treatment::Kind::quench));
}

TEST_CASE("streams that are no waste by themselves") {
    const WasteOf convergent("routes/4-chloro-4-methoxychalcone/convergent.json", us_rules());
    CHECK(convergent.stream("recovered dichloromethane").decision.outcome == Decision::Outcome::recovered);
    CHECK(convergent.stream("hydrogen chloride to the trap").decision.outcome == Decision::Outcome::trap);
    CHECK(convergent.stream("spent drying agent", "acylation").decision.kind == ContainerKind::solids);
    const WasteOf one(a3, us_rules());
    CHECK(one.stream("salts left on the crystals").decision.outcome == Decision::Outcome::on_product);
    CHECK(one.stream("vapour in drying").decision.outcome == Decision::Outcome::air);
}

TEST_CASE("of both readings the larger treatment is told") {
    const WasteOf e3("routes/adipic-acid/E3.json", us_rules());
    double quench = 0;
    for (const StreamAdvice& advice : e3.waste.streams)
        for (const Treatment& treatment : advice.decision.first)
            if (treatment.kind == Treatment::Kind::quench) {
                quench = std::max(quench, treatment.moles);
                for (const Decision* reading : {&advice.nominal_decision, &advice.unreacted_decision})
                    for (const Treatment& one : reading->first)
                        if (one.kind == Treatment::Kind::quench) CHECK(treatment.moles >= one.moles);
            }
    CHECK(1000 * quench == doctest::Approx(47).epsilon(0.05)); // as the plan of its quench has it
}

TEST_CASE("carbon monoxide and hydrogen of the three-step ibuprofen leave before the container") {
    const WasteOf three("routes/ibuprofen/three-step.json", us_rules());
    const auto told = [&](const std::string& step, const std::string& gas) {
        for (const StreamAdvice& advice : three.waste.streams)
            if (advice.stream.step_id == step && !advice.stream.is_gas())
                for (const Treatment& one : advice.decision.first)
                    if (one.kind == Treatment::Kind::let_gas_leave && one.of == gas) return one.words;
        return std::string();
    };
    // 100 mmol of 28.01 g/mol and of 2.016 g/mol.
    CHECK(holds(told("carbonylation", "carbon monoxide"),
                "2.8 g carbon monoxide leave first (toxic, flammable)"));
    CHECK(holds(told("hydrogenation", "hydrogen"), "0.20 g hydrogen leave first (flammable)"));
}

TEST_CASE("grams of streams add up to the ledger, per pot times runs") {
    for (const std::string& path : shipped_routes()) {
        const WasteOf one(path, us_rules());
        const FlatRoute flat(*one.route);
        const Ledger ledger = make_ledger(flat, flat.evaluate(flat.nominal()));
        double grams = 0;
        for (const StreamAdvice& advice : one.waste.streams)
            grams += advice.nominal.grams * advice.stream.runs;
        CHECK(grams == doctest::Approx(ledger.streams).epsilon(1e-6));
    }
}
