// SPDX-License-Identifier: MIT
#include "route/route_reader.hpp"

#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

/// Every key of the format once.
constexpr const char* everything = R"({
  "$schema": "../route.schema.json",
  "id": "all-keys_1.0",
  "title": "A route with every key",
  "product": "4-bromoacetanilide",
  "source": "invented for a test",
  "status": "designed from the equations, never run",
  "notes": ["first note", "second note"],
  "steps": [
    {
      "id": "s1", "title": "bromination", "product": "4-bromoacetanilide", "reference": "acetanilide",
      "overall": "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water",
      "isolated": {"yield": "80 +/- 3 %", "spread": "standard", "assumed": true, "note": "one for all"},
      "dissolved": ["hydrogen bromide"],
      "rest": "on the crystals", "gas": "hood",
      "streams": [{"name": "filtrate", "container": "aqueous", "note": "acid"}],
      "notes": ["of the step"],
      "stages": [
        {
          "title": "oxidation", "phase": "reaction", "temperature": "60 degC", "time": "55 min",
          "energy": "0.1 kWh", "cooling_water": "10 L",
          "charges": [
            {"material": "acetanilide", "amount": "10 mmol", "role": "substrate", "source": "bench", "note": "weighed",
             "spread": {"kind": "PERT", "from": "9 mmol", "to": "0.012 mol", "note": "guessed"}},
            {"material": "hydrobromic acid 48 %", "amount": "1.25 eq", "role": "reagent", "of": "hydrogen bromide",
             "bought": true},
            {"material": "hydrogen peroxide 30 %", "amount": "130 mol %", "role": "oxidant",
             "measured_with": "measuring cylinder 10 mL class B"},
            {"material": "oxygen", "amount": "as used", "role": "trace"}
          ],
          "reactions": [
            {"equation": "hydrogen peroxide + 2 hydrogen bromide -> bromine + 2 water", "title": "bromine is made",
             "conversion": "95 %", "of": "hydrogen peroxide", "priority": 1},
            {"equation": "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide", "split": 2}
          ]
        },
        {
          "title": "filtration", "phase": "workup",
          "charges": [{"material": "water", "amount": "3 x 5 mL", "role": "wash"}],
          "separations": [
            {"by": "filtration", "to": "filtrate", "keeps": {"4-bromoacetanilide": "100 %", "acetanilide": "98 %"},
             "held": "0.5 g/g", "loss": "100 %"},
            {"by": "decantation", "to": "water layer", "leaves": ["water"]},
            {"by": "drying", "to": "air"}
          ]
        },
        {"title": "nothing", "phase": "purification"}
      ]
    }
  ],
  "reuse": [{"substance": "water", "from": {"step": "s1", "stream": "air"}, "to": "s1", "fraction": "90 %", "note": "back",
             "spread": {"kind": "results", "values": ["88 %", "92 %"]}}],
  "bottles": [{"material": "hydrobromic acid 48 %", "of": "hydrogen bromide", "strength": "48 +/- 1 %",
               "spread": "tolerance", "note": "as its label says"}],
  "measured_with": {"masses": "top-pan balance 0.01 g", "volumes": "burette 50 mL class AS",
                    "liquids": "measuring cylinder 50 mL class A"},
  "coproducts": [{"substance": "water", "note": "sold"}]
})";

std::string with(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

const Substance* substance(std::string_view name) {
    return Catalogue::embedded().find_substance(name);
}

std::string simple(std::string_view more = {}, std::string_view charge_more = {},
                   std::string_view reaction_more = {}, std::string_view stage_more = {}) {
    return route("4-bromoacetanilide",
                 {step("4-bromoacetanilide", "acetanilide", bromination_equation,
                       {stage("reaction",
                              {charge("acetanilide", "10 mmol", "substrate"),
                               charge("bromine", "10 mmol", "reagent", charge_more)},
                              {reaction(bromination_equation, reaction_more)}, {}, stage_more)},
                       more)});
}

bool says(const std::string& text, std::initializer_list<std::string_view> parts) {
    const auto found = problems_of(text);
    CAPTURE(found.size());
    if (!found.empty()) CAPTURE(found.front());
    return any_holds(found, parts);
}

} // namespace

TEST_CASE("the spread of an isolated mass is kept over the mass, whatever unit it is written in") {
    const std::string text =
        with(std::string(everything), R"("yield": "80 +/- 3 %")", R"("mass": "1500 +/- 20 mg")");
    Problems problems;
    const Route route = read_route(make_source("mass.json", text), Catalogue::embedded(), problems);
    CHECK(route.steps[0].isolated.mass->in(unit::g) == Approx(1.5));
    REQUIRE(route.steps[0].isolated.spread);
    CHECK(route.steps[0].isolated.spread->deviation() == Approx(0.02 / 1.5)); // over the mass as written
}

TEST_CASE("every key of the format reaches its place") {
    Problems problems;
    const Route route = read_route(make_source("all.json", everything), Catalogue::embedded(), problems);
    CHECK(route.id == "all-keys_1.0");
    CHECK(route.title == "A route with every key");
    CHECK(route.product == substance("4-bromoacetanilide"));
    CHECK(route.origin == "invented for a test");
    CHECK(route.status == "designed from the equations, never run");
    CHECK(route.notes == std::vector<std::string>{"first note", "second note"});
    CHECK(route.source->name == "all.json");

    REQUIRE(route.steps.size() == 1);
    const Step& step = route.steps[0];
    CHECK(step.id == "s1");
    CHECK(step.title == "bromination");
    CHECK(step.reference == substance("acetanilide"));
    CHECK(step.overall.coefficient_of(substance("water")) == 2);
    CHECK(step.overall.coefficient_of(substance("acetanilide")) == -1);
    CHECK(step.overall.coefficient_of(substance("bromine")) == 0);
    CHECK(step.overall.pointer == "/steps/0/overall");
    CHECK(*step.isolated.yield == Approx(0.8));
    CHECK_FALSE(step.isolated.mass);
    CHECK(step.isolated.spread->deviation() == Approx(3.0 / 80.0));
    CHECK(step.isolated.assumed);
    CHECK(step.isolated.note == "one for all");
    CHECK(step.dissolved == std::vector<const Substance*>{substance("hydrogen bromide")});
    CHECK(step.rest == "on the crystals");
    CHECK(step.gas == "hood");
    REQUIRE(step.streams.size() == 1);
    CHECK(step.streams[0].name == "filtrate");
    CHECK(step.streams[0].container == "aqueous");
    CHECK(step.streams[0].note == "acid");
    CHECK(step.notes == std::vector<std::string>{"of the step"});

    REQUIRE(step.stages.size() == 3);
    const Stage& first = step.stages[0];
    CHECK(first.title == "oxidation");
    CHECK(first.phase == Phase::reaction);
    CHECK(first.temperature->celsius() == Approx(60));
    CHECK(first.time->in(unit::min) == Approx(55));
    CHECK(first.energy->in(unit::kJ) == Approx(360));
    CHECK(first.cooling_water->in(unit::mL) == Approx(10000));
    REQUIRE(first.charges.size() == 4);
    CHECK(first.charges[0].material->name == "acetanilide");
    CHECK(first.charges[0].role == find_role("substrate"));
    CHECK(first.charges[0].amount.value == 10);
    CHECK(first.charges[0].amount.unit == "mmol");
    CHECK(first.charges[0].source == "bench");
    CHECK(first.charges[0].note == "weighed");
    CHECK_FALSE(first.charges[0].bought);
    CHECK(first.charges[0].pointer == "/steps/0/stages/0/charges/0");
    CHECK(first.charges[1].of == substance("hydrogen bromide"));
    CHECK(first.charges[1].bought);
    CHECK(first.charges[1].amount.unit == "eq");
    CHECK(first.charges[2].amount.unit == "mol %");
    CHECK(first.charges[3].as_used);
    REQUIRE(first.reactions.size() == 2);
    CHECK(first.reactions[0].title == "bromine is made");
    CHECK(first.reactions[0].conversion == Approx(0.95));
    CHECK(first.reactions[0].of == substance("hydrogen peroxide"));
    CHECK(first.reactions[0].priority == 1);
    CHECK_FALSE(first.reactions[0].split);
    CHECK(first.reactions[1].conversion == 1);
    CHECK(first.reactions[1].split == 2);

    const Stage& second = step.stages[1];
    CHECK(second.phase == Phase::workup);
    CHECK(second.charges[0].amount.repeat == 3);
    REQUIRE(second.separations.size() == 3);
    CHECK(second.separations[0].by == SeparationMethod::filtration);
    CHECK(second.separations[0].to == "filtrate");
    CHECK(second.separations[0].lists_what_stays);
    CHECK(second.separations[0].shares.size() == 2);
    CHECK(second.separations[0].held == Approx(0.5));
    CHECK(*second.separations[0].loss == Approx(1));
    CHECK_FALSE(second.separations[1].lists_what_stays);
    CHECK(second.separations[1].shares[0].substance == substance("water"));
    CHECK(second.separations[1].shares[0].fraction == 1);
    CHECK_FALSE(second.separations[1].loss);
    CHECK(second.separations[2].takes_volatiles);
    CHECK(step.stages[2].phase == Phase::purification);
    CHECK(step.stages[2].charges.empty());

    REQUIRE(route.reuse.size() == 1);
    CHECK(route.reuse[0].substance == substance("water"));
    CHECK(route.reuse[0].from_step == 0);
    CHECK(route.reuse[0].from_stream == "air");
    CHECK(route.reuse[0].to_step == 0);
    CHECK(route.reuse[0].fraction == Approx(0.9));
    CHECK(route.reuse[0].note == "back");
    REQUIRE(route.coproducts.size() == 1);
    CHECK(route.coproducts[0].substance == substance("water"));
    CHECK(route.coproducts[0].note == "sold");
}

TEST_CASE("what is left out takes its default") {
    const Built built(simple());
    const Step& step = built.route.steps[0];
    CHECK(step.title == step.id);
    CHECK(step.rest == "residue");
    CHECK(step.gas == "gas");
    CHECK(step.dissolved.empty());
    CHECK_FALSE(step.isolated.assumed);
    CHECK_FALSE(step.stages[0].time);
    CHECK_FALSE(step.stages[0].reactions[0].priority);
    CHECK(built.route.reuse.empty());
    CHECK(built.problems.all.empty());
}

TEST_CASE("substances are found by formula, synonym, id and CAS number, in any case") {
    for (const char* bromine : {"Br2", "bromine", "BROMINE", "7726-95-6"})
        CHECK(problems_of(with(simple(), R"("material": "bromine")",
                               R"("material": ")" + std::string(bromine) + "\""))
                  .empty());
    CHECK(problems_of(with(simple(), std::string(bromination_equation),
                           "acetanilide + Br2 -> 4-bromoacetanilide + HBr"))
              .empty());
}

TEST_CASE("unknown names are reported with the nearest one, all at once") {
    std::string text = simple();
    text = with(text, R"("material": "bromine")", R"("material": "bromime")");
    text = with(text, R"("role": "substrate")", R"("role": "substrat")");
    text = with(text, R"("reference": "acetanilide")", R"("reference": "acetanillide")");
    const auto found = problems_of(text);
    CHECK(found.size() == 3);
    CHECK(any_holds(
        found, {"test.json:", "/charges/1/material", "no material \"bromime\"", "nearest: \"bromine\""}));
    CHECK(any_holds(found, {"/charges/0/role", "nearest: \"substrate\""}));
    CHECK(any_holds(found,
                    {"/steps/0/reference", "no substance \"acetanillide\"", "nearest: \"acetanilide\""}));
}

TEST_CASE("keys that mean nothing are refused at every level") {
    CHECK(says(with(simple(), R"("title": "test")", R"("title": "test", "sources": "x")"),
               {"/sources", "unknown key \"sources\"", "nearest: \"source\""}));
    CHECK(says(simple(R"("yields": 1)"), {"/steps/0/yields", "unknown key"}));
    CHECK(says(simple("", R"("amounts": "1 g")"), {"/charges/1/amounts", "nearest: \"amount\""}));
    CHECK(says(simple("", "", R"("conversions": "90 %")"),
               {"/reactions/0/conversions", "nearest: \"conversion\""}));
    CHECK(says(simple("", "", "", R"("times": "1 h")"), {"/stages/0/times", "nearest: \"time\""}));
    CHECK(says(simple(R"("isolated": {"yield": "80 %", "yeild": "1 %"})"),
               {"/isolated/yeild", "nearest: \"yield\""}));
    CHECK(says(with(everything, R"("to": "air"})", R"("to": "air", "keep": []})"),
               {"/separations/2/keep", "nearest: \"keeps\""}));
    CHECK(says(with(everything, R"("step": "s1", "stream": "air")",
                    R"("step": "s1", "stream": "air", "streams": 1)"),
               {"/reuse/0/from/streams"}));
}

TEST_CASE("keys that are needed are missed") {
    for (const char* key : {"\"title\"", "\"source\"", "\"product\"", "\"steps\"", "\"id\"", "\"status\""}) {
        CAPTURE(key);
        std::string text = everything;
        text = with(text, key, "\"$schema\"");
        if (std::string(key) == "\"id\"") text = with(everything, "\"id\": \"all-keys_1.0\",", "");
        if (std::string(key) == "\"title\"")
            text = with(everything, "\"title\": \"A route with every key\",", "");
        if (std::string(key) == "\"source\"")
            text = with(everything, "\"source\": \"invented for a test\",", "");
        if (std::string(key) == "\"product\"")
            text = with(everything, "\"product\": \"4-bromoacetanilide\",", "");
        if (std::string(key) == "\"status\"")
            text = with(everything, "\"status\": \"designed from the equations, never run\",", "");
        if (std::string(key) == "\"steps\"") text = with(everything, "\"steps\"", "\"stepps\"");
        CHECK(any_holds(problems_of(text), {"the key " + std::string(key) + " is missing"}));
    }
    CHECK(says(with(everything, R"("material": "acetanilide", )", ""),
               {"/charges/0", "the key \"material\" is missing"}));
    CHECK(says(with(everything, R"("amount": "10 mmol", )", ""),
               {"/charges/0", "the key \"amount\" is missing"}));
    CHECK(says(with(everything, R"("by": "drying", )", ""), {"/separations/2", "the key \"by\" is missing"}));
    CHECK(says(with(everything, R"("phase": "purification")", R"("notes": [])"),
               {"/stages/2", "the key \"phase\" is missing"}));
}

TEST_CASE("amounts: unit, sign, form") {
    const auto amount = [](std::string_view text) {
        return with(simple(), R"("amount": "10 mmol", "role": "reagent")",
                    R"("amount": ")" + std::string(text) + R"(", "role": "reagent")");
    };
    CHECK(says(amount("10 min"), {"/charges/1/amount", "\"min\" is no unit of an amount"}));
    CHECK(says(amount("-1 g"), {"/charges/1/amount", "cannot be negative"}));
    CHECK(says(amount("ten g"), {"/charges/1/amount"}));
    CHECK(says(amount("1,5 g"), {"/charges/1/amount", "comma"}));
    CHECK(says(amount("nan g"), {"/charges/1/amount"}));
    CHECK(says(amount("1e400 g"), {"/charges/1/amount"}));
    CHECK(says(amount("5"), {"/charges/1/amount"}));
    CHECK(says(
        with(simple(), R"("amount": "10 mmol", "role": "reagent")", R"("amount": 10, "role": "reagent")"),
        {"/charges/1/amount", "found a number"}));
    CHECK(problems_of(amount("1.60 g")).empty());
    CHECK(problems_of(amount("0.52 mL")).empty());
}

TEST_CASE("as used is for pure substances from the air") {
    CHECK(says(with(everything, R"("material": "oxygen", "amount": "as used")",
                    R"("material": "hydrogen peroxide 30 %", "amount": "as used")"),
               {"/charges/3/amount", "only a pure substance"}));
}

TEST_CASE("of names a component") {
    CHECK(says(simple("", R"("of": "water")"), {"/charges/1/of", "\"bromine\" holds no water"}));
}

TEST_CASE("a conversion says what it counts, and that must be used up") {
    CHECK(says(simple("", "", R"("conversion": "90 %")"), {"/reactions/0/conversion", "say in \"of\""}));
    CHECK(says(simple("", "", R"("conversion": "90 %", "of": "hydrogen bromide")"),
               {"/reactions/0/of", "not used up"}));
    CHECK(says(simple("", "", R"("conversion": "120 %", "of": "acetanilide")"), {"/reactions/0/conversion"}));
    CHECK(says(simple("", "", R"("conversion": 0.9, "of": "acetanilide")"), {"/reactions/0/conversion"}));
    CHECK(problems_of(
              simple(R"("isolated": {"yield": "85 %"})", "", R"("conversion": "90 %", "of": "acetanilide")"))
              .empty());
}

TEST_CASE("priority and split") {
    CHECK(says(simple("", "", R"("priority": 0)"), {"/reactions/0/priority", "from 1"}));
    CHECK(says(simple("", "", R"("priority": 1.5)"), {"/reactions/0/priority", "whole number"}));
    CHECK(says(simple("", "", R"("split": 0)"), {"/reactions/0/split"}));
    CHECK(says(simple("", "", R"("split": -1)"), {"/reactions/0/split"}));
    CHECK(says(simple("", "", R"("priority": 1, "split": 1)"), {"/reactions/0/split", "not both"}));
}

TEST_CASE("isolated: one of mass and yield, above nothing, at most all") {
    CHECK(says(simple(R"("isolated": {})"), {"/isolated", "give the isolated \"mass\" or the \"yield\""}));
    CHECK(says(simple(R"("isolated": {"mass": "1 g", "yield": "50 %"})"), {"/isolated/mass", "not both"}));
    CHECK(says(simple(R"("isolated": {"yield": "103 %"})"),
               {"/isolated/yield", "103 %", "wet or impure", "limiting reagent", "wrong mass"}));
    CHECK(says(simple(R"("isolated": {"yield": "0 %"})"), {"/isolated/yield", "above 0"}));
    CHECK(says(simple(R"("isolated": {"mass": "0 g"})"), {"/isolated/mass", "above 0"}));
    CHECK(says(simple(R"("isolated": {"mass": "-1 g"})"), {"/isolated/mass"}));
    CHECK(says(simple(R"("isolated": {"mass": "1 mL"})"), {"/isolated/mass"}));
    CHECK(says(simple(R"("isolated": {"yield": 0.8})"), {"/isolated/yield", "found a number"}));
}

TEST_CASE("separations: what stays or what goes, spelt right") {
    const auto separation = [](std::string_view text) {
        return route("4-bromoacetanilide",
                     {step("4-bromoacetanilide", "acetanilide", bromination_equation,
                           {stage("reaction",
                                  {charge("acetanilide", "10 mmol", "substrate"),
                                   charge("bromine", "10 mmol", "reagent")},
                                  {reaction(bromination_equation)}, {std::string(text)})})});
    };
    CHECK(says(separation(R"({"by": "filtration", "to": "f"})"),
               {"/separations/0", "say in \"keeps\" what stays"}));
    CHECK(says(separation(R"({"by": "filtration", "to": "f", "keeps": [], "leaves": []})"),
               {"/leaves", "not both"}));
    CHECK(says(separation(R"({"by": "filtraton", "to": "f", "keeps": []})"),
               {"/by", "nearest: \"filtration\""}));
    CHECK(says(separation(R"({"by": "filtration", "to": "f", "keeps": ["bromin"]})"),
               {"/keeps/0", "nearest: \"bromine\""}));
    CHECK(says(separation(R"({"by": "filtration", "to": "f", "keeps": {"bromine": "120 %"}})"),
               {"/keeps/bromine"}));
    CHECK(says(separation(R"({"by": "filtration", "to": "f", "keeps": ["bromine", "Br2"]})"),
               {"/keeps/1", "named twice"}));
    CHECK(says(separation(R"({"by": "filtration", "to": "f", "keeps": [], "held": "0.5"})"), {"/held"}));
    CHECK(says(separation(R"({"by": "filtration", "to": "f", "keeps": [], "held": "-0.5 g/g"})"), {"/held"}));
    CHECK(says(separation(R"({"by": "filtration", "to": "f", "keeps": [], "loss": "1.5"})"), {"/loss"}));
    CHECK(problems_of(separation(R"({"by": "filtration", "to": "f", "keeps": []})")).empty());
    CHECK(problems_of(separation(R"({"by": "evaporation", "to": "f"})")).empty());
}

TEST_CASE("identity of a route") {
    CHECK(says(with(everything, "all-keys_1.0", "a b"), {"/id", "made of letters, digits"}));
    CHECK(says(with(everything, "all-keys_1.0", "a<b"), {"/id"}));
    CHECK(says(with(everything, "designed from the equations, never run", "designed"),
               {"/status", "is none of"}));
    CHECK(says(route("4-bromoacetanilide", {}), {"/steps", "at least one step"}));
    CHECK(says(with(everything, R"("to": "s1", "fraction")", R"("to": "s2", "fraction")"),
               {"/reuse/0/to", "\"s2\" is none of"}));
}

TEST_CASE("equations that cannot be read") {
    const auto equation = [](std::string_view text) {
        return with(simple(), R"("overall": ")" + std::string(bromination_equation),
                    R"("overall": ")" + std::string(text));
    };
    CHECK(says(equation("acetanilide + bromine"), {"/overall"}));
    CHECK(says(equation("acetanilide + bromine -> 4-bromoacetanilide"),
               {"/overall", "does not balance", "Br"}));
    CHECK(says(equation("2 acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide"),
               {"does not balance",
                "balanced it reads: acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide"}));
    CHECK(says(equation("acetanilide + bromine -> 4-bromoacetanilide + hydrogen chloride"),
               {"no coefficients balance it"}));
    CHECK(says(equation("acetanilide -> acetanilide"), {"nothing changes"}));
    CHECK(says(equation("acetanilide + brom -> 4-bromoacetanilide + hydrogen bromide"),
               {"/overall", "no substance \"brom\""}));
    CHECK(says(equation("petroleum ether -> 4-bromoacetanilide"), {"has no formula"}));
}

TEST_CASE("a material is no substance: the message names one of its components") {
    CHECK(says(simple(R"("dissolved": ["hydrobromic acid 48 %"])"),
               {"/dissolved/0", "is a material", "hydrogen bromide"}));
}

TEST_CASE("a formula that several substances share asks for the name") {
    const Catalogue bench = catalogue_of({"cis | C5H10", "trans | C5H10", "water | H2O | liquid"});
    const auto found =
        problems_of(one_pot("trans", "cis", "cis -> trans", {charge("C5H10", "1 mol", "substrate")},
                            {reaction("cis -> trans")}),
                    bench);
    CHECK(any_holds(found, {"/charges/0/material", "cis", "trans"}));
    CHECK(problems_of(one_pot("trans", "cis", "cis -> trans",
                              {charge("cis", "1 mol", "substrate"), charge("H2O", "1 mol", "solvent")},
                              {reaction("cis -> trans")}),
                      bench)
              .empty());
}
