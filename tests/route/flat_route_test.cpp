// SPDX-License-Identifier: MIT
// One step evaluated: what forms, what is isolated, where the loss goes in both readings, what is in the
// flask.
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

/// 10 mmol acetanilide, 10.6 mmol bromine in acetic acid; poured into water and filtered.
std::string bench_sheet(std::string_view more, std::string_view reaction_more = {}) {
    return route(
        "4-bromoacetanilide",
        {step("4-bromoacetanilide", "acetanilide", bromination_equation,
              {stage("reaction",
                     {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "1.06 eq", "reagent"),
                      charge("acetic acid", "7 g", "solvent")},
                     {reaction(bromination_equation, reaction_more)}),
               stage("workup", {charge("water", "50 g", "drown-out")}, {},
                     {filtration("filtrate", R"("keeps": ["4-bromoacetanilide"])")})},
              more)});
}

const Catalogue& isomers() {
    static const Catalogue catalogue = catalogue_of(
        {"A | C10H20", "B | C10H20", "P | C10H20", "Q | C10H20", "R | C10H20", "water | H2O | liquid | 1.0"});
    return catalogue;
}

} // namespace

TEST_CASE("made, isolated, lost: the nominal reading puts the loss into the filtrate as product") {
    const Built built(bench_sheet(R"("isolated": {"yield": "80 %"}, "dissolved": ["hydrogen bromide"])"));
    CHECK(built.step().theory == Approx(0.010));
    CHECK(built.step().made == Approx(0.010));
    CHECK(built.step().isolated == Approx(0.008));
    CHECK(built.nominal.product == Approx(0.008 * 214.062)); // C8H8BrNO
    CHECK(built.mmol_out("filtrate", "4-bromoacetanilide") == Approx(2));
    CHECK(built.mmol_out("filtrate", "acetanilide") == 0);
    CHECK(built.mmol_out("filtrate", "bromine") == Approx(0.6));
    CHECK(built.mmol_out("filtrate", "hydrogen bromide") == Approx(10));
    CHECK(built.out("filtrate", "water") == Approx(50));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("the other reading leaves substrate and reagent where the product never formed") {
    const Built built(bench_sheet(R"("isolated": {"yield": "80 %"}, "dissolved": ["hydrogen bromide"])"));
    CHECK(built.mmol_out("filtrate", "4-bromoacetanilide", true) == 0);
    CHECK(built.mmol_out("filtrate", "acetanilide", true) == Approx(2));
    CHECK(built.mmol_out("filtrate", "bromine", true) == Approx(2.6));
    CHECK(built.mmol_out("filtrate", "hydrogen bromide", true) == Approx(8));
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("a full yield reads the same both ways") {
    const Built built(bench_sheet(R"("dissolved": ["hydrogen bromide"])"));
    for (const std::string_view substance :
         {"acetanilide", "bromine", "hydrogen bromide", "4-bromoacetanilide"})
        CHECK(built.mmol_out("filtrate", substance) == Approx(built.mmol_out("filtrate", substance, true)));
    CHECK(built.mmol_out("filtrate", "4-bromoacetanilide") == 0);
}

TEST_CASE("an isolated mass is taken as it is") {
    const Built built(bench_sheet(R"("isolated": {"mass": "1.712 g"})"));
    CHECK(built.nominal.product == Approx(1.712));
    CHECK(built.step().isolated / built.step().theory == Approx(1.712 / 2.14062));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("partial conversion: the yield counts from theory, the loss from what was made") {
    // 95 % conversion makes 9.5 mmol; 80 % of theory are isolated, 1.5 mmol are lost, 0.5 mmol never reacted.
    const Built built(bench_sheet(R"("isolated": {"yield": "80 %"}, "dissolved": ["hydrogen bromide"])",
                                  R"("conversion": "95 %", "of": "acetanilide")"));
    CHECK(built.step().theory == Approx(0.010));
    CHECK(built.step().made == Approx(0.0095));
    CHECK(built.step().isolated == Approx(0.008));
    CHECK(built.mmol_out("filtrate", "4-bromoacetanilide") == Approx(1.5));
    CHECK(built.mmol_out("filtrate", "acetanilide") == Approx(0.5));
    CHECK(built.mmol_out("filtrate", "acetanilide", true) == Approx(2));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("theory of a chain with partial conversions is that of full conversion in every link") {
    const Built built(one_pot("P", "A", "A -> P", {charge("A", "10 mmol", "substrate")},
                              {reaction("A -> B", R"("conversion": "90 %", "of": "A")"),
                               reaction("B -> P", R"("conversion": "50 %", "of": "B")")},
                              R"("isolated": {"yield": "40 %"})"),
                      isomers());
    CHECK(built.step().theory == Approx(0.010));
    CHECK(built.step().made == Approx(0.0045));
    CHECK(built.step().isolated == Approx(0.004));
    CHECK(built.mmol_out("residue", "A") == Approx(1));
    CHECK(built.mmol_out("residue", "B") == Approx(4.5));
    CHECK(built.mmol_out("residue", "P") == Approx(0.5));
    // Unreacted: 4 mmol of P came from 8 mmol of B, for half of it stops there.
    CHECK(built.mmol_out("residue", "P", true) == 0);
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("a side reaction that eats into the product lowers what is made, not the theory") {
    // 10 mmol of P form and a twentieth of them turns into Q.
    const Built built(one_pot("P", "A", "A -> P", {charge("A", "10 mmol", "substrate")},
                              {reaction("A -> P"), reaction("P -> Q", R"("conversion": "5 %", "of": "P")")},
                              R"("isolated": {"yield": "80 %"})"),
                      isomers());
    CHECK(built.step().theory == Approx(0.010));
    CHECK(built.step().made == Approx(0.0095));
    CHECK(built.step().isolated == Approx(0.008));
    CHECK(built.mmol_out("residue", "Q") == Approx(0.5));
    CHECK(built.mmol_out("residue", "P") == Approx(1.5));
    // Unreacted: 8 mmol are left of 8.42 that formed.
    CHECK(built.mmol_out("residue", "Q", true) == Approx(0.05 * 8 / 0.95));
    CHECK(built.mmol_out("residue", "A", true) == Approx(10 - 8 / 0.95));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("product that decomposes in the workup") {
    const Built built(
        route("P", {step("P", "A", "A -> P",
                         {stage("reaction", {charge("A", "10 mmol", "substrate")}, {reaction("A -> P")}),
                          stage("workup", {charge("water", "10 g", "wash")},
                                {reaction("P -> Q", R"("conversion": "10 %", "of": "P")")},
                                {filtration("filtrate", R"("keeps": ["P", "Q"])")})},
                         R"("isolated": {"yield": "72 %"})")}),
        isomers());
    CHECK(built.step().theory == Approx(0.010));
    CHECK(built.step().made == Approx(0.009));
    CHECK(built.mmol_out("residue", "Q") == Approx(1));
    CHECK(built.mmol_out("filtrate", "P") == Approx(1.8));
    // Unreacted: 8 mmol formed, 0.8 of them decomposed.
    CHECK(built.mmol_out("residue", "Q", true) == Approx(0.8));
    CHECK(built.mmol_out("filtrate", "A", true) == Approx(2));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("seed crystals come in with the charges and go out with the product") {
    const Built built(
        one_pot("P", "A", "A -> P",
                {charge("A", "10 mmol", "substrate"), charge("P", "0.1 mmol", "trace", R"("bought": true)")},
                {reaction("A -> P")}, R"("isolated": {"yield": "90 %"})"),
        isomers());
    CHECK(built.step().theory == Approx(0.010)); // what forms; the seeds were there
    CHECK(built.step().isolated == Approx(0.009));
    CHECK(built.mmol_out("residue", "P") == Approx(1.1));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("a product formed in two stages is capped over both") {
    const Built built(
        route("P", {step("P", "A", "A -> P",
                         {stage("reaction", {charge("A", "6 mmol", "substrate")}, {reaction("A -> P")}),
                          stage("reaction", {charge("A", "4 mmol", "substrate")}, {reaction("A -> P")})},
                         R"("isolated": {"yield": "75 %"})")}),
        isomers());
    CHECK(built.step().theory == Approx(0.010));
    CHECK(built.mmol_out("residue", "P") == Approx(2.5));
    CHECK(built.mmol_out("residue", "A", true) == Approx(2.5));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("equivalents and mol % count from the reference, through the mass fraction of a solution") {
    const Built built(one_pot(
        "4-bromoacetanilide", "acetanilide",
        "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water",
        {charge("acetanilide", "10 mmol", "substrate"), charge("hydrobromic acid 48 %", "1.25 eq", "reagent"),
         charge("hydrogen peroxide 30 %", "130 mol %", "oxidant")},
        {reaction(peroxide_equation), reaction(bromination_equation)}));
    CHECK(built.in("hydrogen bromide") == Approx(0.0125 * 80.912));
    CHECK(built.in("hydrogen peroxide") == Approx(0.013 * 34.014));
    CHECK(built.in("water") == Approx(0.0125 * 80.912 * 52 / 48 + 0.013 * 34.014 * 70 / 30));
    CHECK(built.in() == Approx(built.in("acetanilide") + built.in("hydrogen bromide") / 0.48 +
                               built.in("hydrogen peroxide") / 0.30));
}

TEST_CASE("what is in the flask at most: charges, products, and transients at their ceiling") {
    // 12.5 mmol of bromide can be at most 6.25 mmol of bromine at one time.
    const Built built(one_pot(
        "4-bromoacetanilide", "acetanilide",
        "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water",
        {charge("acetanilide", "10 mmol", "substrate"), charge("hydrogen bromide", "12.5 mmol", "reagent"),
         charge("hydrogen peroxide", "13 mmol", "oxidant")},
        {reaction(peroxide_equation), reaction(bromination_equation)}));
    CHECK(built.mmol_in_flask("acetanilide") == Approx(10));
    CHECK(built.mmol_in_flask("hydrogen bromide") == Approx(12.5));
    CHECK(built.mmol_in_flask("hydrogen peroxide") == Approx(13));
    CHECK(built.mmol_in_flask("bromine") == Approx(6.25));
    CHECK(built.mmol_in_flask("4-bromoacetanilide") == Approx(10));
    CHECK(built.step().bromine == Approx(0.00625));
}

TEST_CASE(
    "adding the peroxide in two portions halves neither the total nor the ceiling of what came before") {
    const Built built(
        route("4-bromoacetanilide",
              {step("4-bromoacetanilide", "acetanilide",
                    "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water",
                    {stage("reaction",
                           {charge("acetanilide", "10 mmol", "substrate"),
                            charge("hydrogen bromide", "12.5 mmol", "reagent"),
                            charge("hydrogen peroxide", "4 mmol", "oxidant")},
                           {reaction(peroxide_equation), reaction(bromination_equation)}),
                     stage("reaction", {charge("hydrogen peroxide", "9 mmol", "oxidant")},
                           {reaction(peroxide_equation), reaction(bromination_equation)})},
                    R"("dissolved": ["hydrogen bromide"])")}));
    CHECK(built.nominal.product == Approx(0.010 * 214.062));
    // First stage: 4 mmol from 4 mmol of peroxide; second: 8.5 mmol of bromide are left, 4.25 mmol of
    // bromine.
    CHECK(built.step().bromine == Approx(0.00425));
    CHECK(built.mmol_in_flask("hydrogen peroxide") == Approx(9));
}

TEST_CASE("tribromide counts as bromine in the flask") {
    const Built built(one_pot(
        "4-bromoacetanilide", "acetanilide",
        "acetanilide + pyridinium tribromide -> 4-bromoacetanilide + pyridinium bromide + hydrogen bromide",
        {charge("acetanilide", "10 mmol", "substrate"),
         charge("pyridinium tribromide", "10.5 mmol", "reagent")},
        {reaction("pyridinium tribromide -> pyridinium bromide + bromine"), reaction(bromination_equation)}));
    CHECK(built.step().bromine == Approx(0.0105)); // free or held, each mole counts once
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("extents are reported for every reaction of every stage") {
    const Built built(bench_sheet(R"("isolated": {"yield": "80 %"})"));
    const auto extents = built.flat.extents(0, built.flat.nominal());
    REQUIRE(extents.size() == 2);
    REQUIRE(extents[0].size() == 1);
    CHECK(extents[0][0] == Approx(0.010));
    CHECK(extents[1].empty());
}

TEST_CASE("other amounts on the compiled route: yields, charges and isolated masses may vary") {
    const Built built(bench_sheet(R"("isolated": {"yield": "80 %"}, "dissolved": ["hydrogen bromide"])"));
    Inputs inputs = built.flat.nominal();
    inputs.charged[1] *= 0.5; // bromine now limits: 5.3 mmol
    inputs.isolated[0] = 0.5;
    const Evaluation varied = built.flat.evaluate(inputs);
    CHECK(varied.steps[0].theory == Approx(0.0053));
    CHECK(varied.product == Approx(0.00265 * 214.062));
    // A second evaluation into the same arrays leaves no trace of the first.
    Evaluation again = varied;
    built.flat.evaluate(built.flat.nominal(), again);
    CHECK(again.out == built.nominal.out);
    CHECK(again.out_unreacted == built.nominal.out_unreacted);
    CHECK(again.in == built.nominal.in);
    CHECK(again.flask == built.nominal.flask);
}

TEST_CASE(
    "a solution may be stronger or weaker than its label: what it brings follows, and the ledger closes") {
    const Built built(route(
        "4-bromoacetanilide",
        {step(
            "4-bromoacetanilide", "acetanilide", bromination_equation,
            {stage("reaction",
                   {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "10 mmol", "reagent"),
                    charge("acetic acid", "5 g", "solvent"), charge("hydrobromic acid 48 %", "2 g", "acid")},
                   {reaction(bromination_equation)})})}));
    Inputs inputs = built.flat.nominal();
    const auto inflows = built.flat.inflows();
    double in_bottle = 0.0;
    for (std::size_t i = 0; i < inflows.size(); ++i) {
        CHECK(inputs.fractions[i] == inflows[i].fraction);
        if (inflows[i].slot != 3) continue;
        inputs.fractions[i] += inflows[i].carrier ? -0.02 : 0.02;
        in_bottle += inputs.fractions[i];
    }
    CHECK(in_bottle == Approx(1.0));
    const Evaluation varied = built.flat.evaluate(inputs);
    CHECK(varied.in[3] + varied.in[4] == Approx(2.0));
    CHECK(varied.in[3] == Approx(1.0)); // half of 2 g is hydrogen bromide now
    double in = 0.0, out = varied.product;
    for (const double grams : varied.in)
        in += grams;
    for (const double grams : varied.out)
        out += grams;
    CHECK(out == Approx(in).epsilon(1e-12));
}

TEST_CASE("a boiling range without a formula is weighed in and out") {
    const Built built(route(
        "4-bromoacetanilide",
        {step("4-bromoacetanilide", "acetanilide", bromination_equation,
              {stage("reaction",
                     {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "10 mmol", "reagent")},
                     {reaction(bromination_equation)}),
               stage("purification", {charge("petroleum ether", "12 g", "rinse")}, {},
                     {filtration("rinse", R"("keeps": ["4-bromoacetanilide"], "held": "0.5 g/g")"),
                      R"({"by": "drying", "to": "vapour"})"})})}));
    CHECK(built.in("petroleum ether") == Approx(12));
    CHECK(built.out("rinse", "petroleum ether") == Approx(12 - 0.5 * 2.14062));
    CHECK(built.out("vapour", "petroleum ether") == Approx(0.5 * 2.14062));
    CHECK(built.closure() < 1e-12);
}
