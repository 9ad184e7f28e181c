// SPDX-License-Identifier: MIT
// Each check of the chemistry has a file here that fails it, and the words a chemist needs.
#include "route/check_report.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

const Catalogue& check_bench() {
    static const Catalogue catalogue =
        catalogue_of({"A | C5H10", "B | C5H10", "C | C5H10", "D | C5H10", "P | C5H10", "Q | C5H10",
                      "water | H2O | liquid | 1.0", "toluene | C7H8 | liquid", "A dimer | C10H20",
                      "air gas | O2 | gas", "A oxide | C5H10O", "A hydrate | C5H12O"});
    return catalogue;
}

Items invented_problems(const std::string& text) {
    return problems_of(text, check_bench());
}

std::string a_to_p(const Items& reactions, std::string_view more = {}, const Items& separations = {}) {
    return route(
        "P",
        {step("P", "A", "A -> P",
              {stage("reaction", {charge("A", "10 mmol", "substrate")}, reactions, separations)}, more)});
}

} // namespace

TEST_CASE("many warnings are cut short, and are still no error") {
    const Route route;
    Problems problems;
    CheckReport report(route, problems);
    for (int i = 0; i < 150; ++i)
        report.warning("/steps", "look at this");
    CHECK(problems.all.size() == 101);
    CHECK_FALSE(problems.any_error());
    CHECK_FALSE(report.failed());
    report.error("/steps", "this is wrong");
    CHECK(problems.all.size() == 102);
    CHECK(report.failed());
}

TEST_CASE("a faultless file has no problem") {
    CHECK(invented_problems(a_to_p({reaction("A -> P")})).empty());
}

TEST_CASE("two steps of one id, two steps to one product") {
    const std::string ab = step(
        "B", "A", "A -> B", {stage("reaction", {charge("A", "1 mol", "substrate")}, {reaction("A -> B")})},
        R"("id": "same")");
    const std::string bp = step(
        "P", "B", "B -> P", {stage("reaction", {charge("B", "1 mol", "substrate")}, {reaction("B -> P")})},
        R"("id": "same")");
    CHECK(
        any_holds(invented_problems(route("P", {ab, bp})), {"/steps/1/id", "two steps are called \"same\""}));
    const std::string again = step(
        "B", "C", "C -> B", {stage("reaction", {charge("C", "1 mol", "substrate")}, {reaction("C -> B")})},
        R"("id": "other")");
    CHECK(any_holds(invented_problems(route("B", {ab, again})),
                    {"/steps/1/product", "two steps make B", "separate routes"}));
}

TEST_CASE("a step without stages, a product that no step makes, an overall equation without the product") {
    CHECK(any_holds(invented_problems(route("P", {step("P", "A", "A -> P", {})})),
                    {"/steps/0/stages", "at least one stage"}));
    CHECK(any_holds(invented_problems(route("Q", {step("P", "A", "A -> P",
                                                       {stage("reaction", {charge("A", "1 mol", "substrate")},
                                                              {reaction("A -> P")})})})),
                    {"/product", "no step makes Q"}));
    CHECK(any_holds(invented_problems(route("P", {step("P", "A", "A -> B",
                                                       {stage("reaction", {charge("A", "1 mol", "substrate")},
                                                              {reaction("A -> P")})})})),
                    {"/steps/0/overall", "does not make P"}));
}

TEST_CASE("a step that is run for nothing") {
    const std::string ab = step(
        "B", "A", "A -> B", {stage("reaction", {charge("A", "1 mol", "substrate")}, {reaction("A -> B")})});
    const std::string cp = step(
        "P", "C", "C -> P", {stage("reaction", {charge("C", "1 mol", "substrate")}, {reaction("C -> P")})});
    CHECK(any_holds(invented_problems(route("P", {ab, cp})), {"/steps/0", "no step uses B"}));
}

TEST_CASE("a reference that is not charged, or only in equivalents of itself") {
    CHECK(any_holds(invented_problems(route("P", {step("P", "B", "A -> P",
                                                       {stage("reaction", {charge("A", "1 mol", "substrate")},
                                                              {reaction("A -> P")})})})),
                    {"/steps/0/reference", "charged nowhere", "(B)"}));
    CHECK(any_holds(invented_problems(route("P", {step("P", "A", "A -> P",
                                                       {stage("reaction", {charge("A", "1 eq", "substrate")},
                                                              {reaction("A -> P")})})})),
                    {"/steps/0/reference"}));
    CHECK(any_holds(invented_problems(route("P", {step("P", "A", "A -> P",
                                                       {stage("reaction", {charge("A", "0 g", "substrate")},
                                                              {reaction("A -> P")})})})),
                    {"/steps/0/reference", "amount 0"}));
}

TEST_CASE("a volume without density names the material") {
    CHECK(any_holds(
        invented_problems(
            route("P", {step("P", "A", "A -> P",
                             {stage("reaction",
                                    {charge("A", "1 mol", "substrate"), charge("toluene", "5 mL", "solvent")},
                                    {reaction("A -> P")})})})),
        {"test.json:", "/charges/1/amount", "no density for \"toluene\"", "mass in g"}));
}

TEST_CASE("a reaction that is not fed") {
    CHECK(any_holds(
        invented_problems(a_to_p({reaction("A -> P"), reaction("A + B -> A dimer")})),
        {"/reactions/1/equation", "nothing supplies B", "charge it, or list the reaction that makes it"}));
}

TEST_CASE("a loop that nothing starts") {
    const auto found =
        invented_problems(a_to_p({reaction("A -> P"), reaction("B -> C"), reaction("C -> B")}));
    CHECK(any_holds(
        found, {"/reactions/1/equation", "nothing starts this loop: B is made only from itself", "trace"}));
}

TEST_CASE("a reaction whose reactant comes only in a later stage") {
    const auto found =
        invented_problems(route("P", {step("P", "A", "A -> P",
                                           {stage("reaction", {charge("A", "10 mmol", "substrate")},
                                                  {reaction("A -> P"), reaction("B -> C")}),
                                            stage("workup", {charge("B", "1 mmol", "quench")})})}));
    CHECK(any_holds(found, {"/stages/0/reactions/1/equation", "only later"}));
}

TEST_CASE("reactions that undo each other") {
    const auto found = invented_problems(a_to_p({reaction("A -> P"), reaction("P -> A")}));
    CHECK(any_holds(found, {"/stages/0/reactions", "undo each other", "only the direction that runs"}));
}

TEST_CASE("reactions that compete: the substance, both places, and what to do") {
    const auto found = invented_problems(a_to_p({reaction("A -> P"), reaction("A -> Q")}));
    CHECK(any_holds(found, {"/reactions/0", "both reactions want A", "\"priority\" or a \"split\""}));
    CHECK(any_holds(found, {"/reactions/1"}));
    CHECK(invented_problems(
              a_to_p({reaction("A -> P", R"("priority": 1)"), reaction("A -> Q", R"("priority": 2)")}))
              .empty());
    CHECK(
        invented_problems(a_to_p({reaction("A -> P", R"("split": 9)"), reaction("A -> Q", R"("split": 1)")}))
            .empty());
    CHECK(any_holds(invented_problems(a_to_p(
                        {reaction("A -> P", R"("priority": 1)"), reaction("A -> Q", R"("priority": 1)")})),
                    {"both reactions want A"}));
}

TEST_CASE("a conversion of what is drawn from the air has nothing to count from") {
    const auto found = invented_problems(route(
        "A oxide",
        {step(
            "A oxide", "A", "2 A + air gas -> 2 A oxide",
            {stage("reaction", {charge("A", "10 mmol", "substrate"), charge("air gas", "as used", "oxidant")},
                   {reaction("2 A + air gas -> 2 A oxide", R"("conversion": "90 %", "of": "air gas")")})})}));
    CHECK(any_holds(found, {"/reactions/0/of", "air gas", "as used"}));
}

TEST_CASE("a product that never forms") {
    // The step holds P only as seeds.
    const auto found = invented_problems(
        route("P", {step("P", "A", "A -> P",
                         {stage("reaction", {charge("A", "10 mmol", "substrate")}, {reaction("A -> Q")})})}));
    CHECK(any_holds(found, {"/steps/0/product", "never make P"}));
}

TEST_CASE("more isolated than can form: the likely causes") {
    const auto found = invented_problems(a_to_p({reaction("A -> P")}, R"("isolated": {"mass": "0.8 g"})"));
    CHECK(any_holds(found, {"/steps/0/isolated", "0.8000 g isolated is more than the 0.7013 g that can form",
                            "wet or impure", "limiting reagent", "wrong mass"}));
    // 80 % of theory is more than a conversion of 70 % can make.
    CHECK(any_holds(invented_problems(a_to_p({reaction("A -> P", R"("conversion": "70 %", "of": "A")")},
                                             R"("isolated": {"yield": "80 %"})")),
                    {"/steps/0/isolated", "more than"}));
    CHECK(invented_problems(a_to_p({reaction("A -> P", R"("conversion": "70 %", "of": "A")")},
                                   R"("isolated": {"yield": "70 %"})"))
              .empty());
}

TEST_CASE("an overall equation that the reactions do not give") {
    // The reactions turn A into P over B; the file forgets the second.
    const auto found = invented_problems(route(
        "A dimer",
        {step("A dimer", "A", "2 A -> A dimer",
              {stage("reaction", {charge("A", "10 mmol", "substrate"), charge("B", "10 mmol", "reagent")},
                     {reaction("A + B -> A dimer")})})}));
    CHECK(any_holds(found, {"/steps/0/overall", "no sum of the reactions", "transient cancels"}));
}

TEST_CASE("an overall equation that uses what is not charged") {
    const auto found = invented_problems(a_to_p({reaction("A -> P")}));
    CHECK(found.empty());
    CHECK(any_holds(invented_problems(route("P", {step("P", "A", "B -> P",
                                                       {stage("reaction", {charge("A", "1 mol", "substrate")},
                                                              {reaction("A -> P")})})})),
                    {"/steps/0/overall", "uses up B"}));
}

TEST_CASE("excess written as stoichiometry: the warning names both atom economies") {
    // 5:1 bromide and bromate counts bromide that only leaves as hydrogen bromide again.
    const std::string overall =
        "6 acetanilide + 10 potassium bromide + 2 potassium bromate + 6 sulfuric acid -> "
        "6 4-bromoacetanilide + 6 hydrogen bromide + 6 potassium sulfate + 6 water";
    const auto found = problems_of(one_pot(
        "4-bromoacetanilide", "acetanilide", overall,
        {charge("acetanilide", "6 mmol", "substrate"), charge("potassium bromide", "10 mmol", "reagent"),
         charge("potassium bromate", "2 mmol", "oxidant"), charge("sulfuric acid", "6 mmol", "acid")},
        {reaction("potassium bromate + 5 potassium bromide + 3 sulfuric acid -> 3 bromine + 3 potassium "
                  "sulfate + 3 water"),
         reaction(bromination_equation),
         reaction("2 hydrogen bromide + potassium sulfate -> 2 potassium bromide + sulfuric acid",
                  R"("conversion": "0 %", "of": "hydrogen bromide")")}));
    CHECK(any_holds(found, {"warning", "/steps/0/overall", "67.1 %", "43.9 %", "excess"}));
}

TEST_CASE("water that reacts must be charged as a reactant") {
    const auto text = [](std::string_view role) {
        return route(
            "A hydrate",
            {step("A hydrate", "A", "A + water -> A hydrate",
                  {stage("reaction", {charge("A", "1 mol", "substrate"), charge("water", "100 g", role)},
                         {reaction("A + water -> A hydrate")})})});
    };
    CHECK(any_holds(invented_problems(text("solvent")),
                    {"warning", "/steps/0/overall", "water", "\"reacting solvent\""}));
    CHECK(invented_problems(text("reacting solvent")).empty());
}

TEST_CASE("separations: the product, what the pot never holds, one name for two kinds") {
    const auto text = [](std::string_view separation) {
        return a_to_p({reaction("A -> P")}, "", {std::string(separation)});
    };
    CHECK(any_holds(invented_problems(text(R"({"by": "filtration", "to": "f", "leaves": ["P"]})")),
                    {"/leaves", "P is the product", "\"loss\""}));
    CHECK(any_holds(invented_problems(text(R"({"by": "filtration", "to": "f", "keeps": {"P": "95 %"}})")),
                    {"/keeps", "P is the product"}));
    CHECK(any_holds(invented_problems(text(R"({"by": "filtration", "to": "f", "leaves": ["toluene"]})")),
                    {"/leaves", "never holds toluene"}));
    CHECK(any_holds(
        invented_problems(a_to_p({reaction("A -> P")}, "",
                                 {filtration("x", R"("leaves": ["A"])"), R"({"by": "drying", "to": "x"})"})),
        {"/separations/1/to", "takes a liquid and a vapour"}));
}

TEST_CASE("shares of the loss add up") {
    CHECK(any_holds(invented_problems(a_to_p({reaction("A -> P")}, R"("isolated": {"yield": "80 %"})",
                                             {filtration("f", R"("leaves": ["A"], "loss": "30 %")"),
                                              filtration("g", R"("leaves": ["A"], "loss": "60 %")")})),
                    {"/steps/0", "\"loss\" add up to 90 %"}));
}

TEST_CASE("notes on streams, dissolved gases") {
    CHECK(any_holds(
        invented_problems(a_to_p({reaction("A -> P")}, R"("streams": [{"name": "filtrat"}])",
                                 {filtration("filtrate", R"("leaves": ["A"])")})),
        {"/streams/0/name", "no separation leads to a stream \"filtrat\"", "nearest: \"filtrate\""}));
    CHECK(any_holds(invented_problems(a_to_p({reaction("A -> P")},
                                             R"("streams": [{"name": "residue"}, {"name": "residue"}])")),
                    {"/streams/1/name", "two notes"}));
    CHECK(any_holds(invented_problems(a_to_p({reaction("A -> P")}, R"("dissolved": ["air gas"])")),
                    {"/dissolved", "never holds air gas"}));
}

TEST_CASE("reuse: the stream, the substance, and what is bought") {
    const auto text = [](std::string_view substance, std::string_view stream) {
        return route(
            "P",
            {step("P", "A", "A -> P",
                  {stage("reaction", {charge("A", "1 mol", "substrate"), charge("toluene", "5 g", "solvent")},
                         {reaction("A -> P")}, {filtration("filtrate", R"("leaves": ["toluene"])")})})},
            R"("reuse": [{"substance": ")" + std::string(substance) +
                R"(", "from": {"step": "P", "stream": ")" + std::string(stream) + R"("}, "to": "P"}])");
    };
    CHECK(invented_problems(text("toluene", "filtrate")).empty());
    CHECK(any_holds(invented_problems(text("toluene", "filtrat")),
                    {"/reuse/0/from/stream", "no stream \"filtrat\"", "nearest: \"filtrate\""}));
    CHECK(
        any_holds(invented_problems(text("water", "filtrate")), {"/reuse/0/substance", "never holds water"}));
    // Nothing of P is bought, so nothing can be saved.
    CHECK(any_holds(invented_problems(text("P", "filtrate")), {"/reuse/0/to"}));
}

TEST_CASE("places name file, line and pointer, and contradictions both places") {
    const std::string text =
        "{\n\"id\": \"T\", \"title\": \"t\", \"product\": \"4-bromoacetanilide\", \"source\": \"s\",\n"
        "\"status\": \"published amounts\", \"steps\": [\n" +
        step("4-bromoacetanilide", "acetanilide", bromination_equation,
             {"\n" + stage("reaction",
                           {charge("acetanilide", "10 mmol", "substrate"),
                            "\n" + charge("bromine", "5 parsec", "reagent")},
                           {reaction(bromination_equation)})}) +
        "]}";
    CHECK(any_holds(problems_of(text), {"test.json:6 /steps/0/stages/0/charges/1/amount: "}));
}

TEST_CASE("what the source gave is held against the amount, within 1 %, where both are quantities") {
    const auto given_as = [](const char* given) { return std::string(R"("given_as": ")") + given + "\""; };
    const auto problems = [](const std::string& substrate, const std::string& reagent) {
        return problems_of(one_pot("4-bromoacetanilide", "acetanilide", bromination_equation,
                                   {substrate, reagent}, {reaction(bromination_equation)}));
    };
    const auto found = [&](const char* amount, const char* given) {
        return problems(charge("acetanilide", amount, "substrate", given_as(given)),
                        charge("bromine", "12.5 mmol", "reagent"));
    };
    // To 10.00 mmol of the reference.
    const auto of_bromine = [&](const char* amount, const char* given) {
        return problems(charge("acetanilide", "1.3517 g", "substrate"),
                        charge("bromine", amount, "reagent", given_as(given)));
    };
    CHECK(of_bromine("12.5 mmol", "1.25 equivalents").empty());
    CHECK(of_bromine("12.6 mmol", "1.3 equivalents").empty()); // what its digits say, and no more
    CHECK(of_bromine("12.5 mmol", "125 mol %").empty());
    CHECK(of_bromine("1.25 eq", "12.5 mmol").empty());
    CHECK(any_holds(of_bromine("10.5 mmol", "1.25 equivalents"),
                    {"warning", "/steps/0/stages/0/charges/1/given_as", "1.25 equivalents is 1.998 g"}));
    CHECK(any_holds(of_bromine("12.56 mmol", "1.2 eq"), {"warning", "given_as"}));
    // 135.166 g/mol, IUPAC 2021 weights: 10.00 mmol are 1.3517 g and 1.5000 g are 11.10 mmol.
    CHECK(any_holds(found("1.5000 g", "10.00 mmol"),
                    {"warning", "/steps/0/stages/0/charges/0/given_as", "10.00 mmol is 1.352 g", "1.5 g"}));
    CHECK(any_holds(found("1.3517 g", "10.11 mmol"), {"warning", "given_as"}));
    CHECK(found("1.3517 g", "10.00 mmol").empty());
    CHECK(found("1.3517 g", "10.09 mmol").empty());
    CHECK(found("1.3517 g", "1352 mg").empty());
    for (const char* remark :
         {"six equivalents", "a little", "10 mL for each gram of crude product", "10 mmol of it"})
        CHECK_MESSAGE(found("1.3517 g", remark).empty(), remark);
}
