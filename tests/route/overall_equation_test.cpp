// SPDX-License-Identifier: MIT
#include "route/overall_equation.hpp"

#include "support/route_builder.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

constexpr std::string_view from_bromate =
    "potassium bromate + 5 potassium bromide + 3 sulfuric acid -> 3 bromine + 3 potassium sulfate + 3 water";
constexpr std::string_view exchange =
    "2 hydrogen bromide + potassium sulfate -> 2 potassium bromide + sulfuric acid";

/// The step of a file that the checks would refuse when the equation is wrong: its overall equation is put in
/// afterwards.
OverallProof prove(const std::string& right, const std::string& overall, const Items& charges,
                   const Items& reactions) {
    Built built(one_pot("4-bromoacetanilide", "acetanilide", right, charges, reactions));
    Step step = built.route.steps[0];
    if (overall != right) {
        const Built other(
            one_pot("4-bromoacetanilide", "acetanilide", overall, charges, {reaction(overall)}));
        step.overall = other.route.steps[0].overall;
        return prove_overall(step);
    }
    return prove_overall(step);
}

double part_of(const OverallProof& proof, std::string_view name) {
    for (const auto& part : proof.best)
        if (part.substance->name == name) return part.coefficient;
    return 0.0;
}

const Items peroxide_charges{charge("acetanilide", "10 mmol", "substrate"),
                             charge("hydrogen bromide", "10 mmol", "reagent"),
                             charge("hydrogen peroxide", "10 mmol", "oxidant")};
const Items peroxide_reactions{reaction(peroxide_equation), reaction(bromination_equation)};
const Items bromate_charges{
    charge("acetanilide", "6 mmol", "substrate"), charge("potassium bromide", "10 mmol", "reagent"),
    charge("potassium bromate", "2 mmol", "oxidant"), charge("sulfuric acid", "6 mmol", "acid")};

} // namespace

TEST_CASE("a single reaction proves itself") {
    const OverallProof proof =
        prove(std::string(bromination_equation), std::string(bromination_equation),
              {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "10 mmol", "reagent")},
              {reaction(bromination_equation)});
    CHECK(proof.proved);
    CHECK(proof.combination == Combination{1.0});
    CHECK(proof.atom_economy == Approx(214.062 / (135.166 + 159.808)).epsilon(1e-6));
    CHECK(proof.best_atom_economy == Approx(proof.atom_economy));
}

TEST_CASE("the transient cancels: one run of each reaction") {
    const std::string overall =
        "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water";
    const OverallProof proof = prove(overall, overall, peroxide_charges, peroxide_reactions);
    CHECK(proof.proved);
    REQUIRE(proof.combination.size() == 2);
    CHECK(proof.combination[0] == Approx(1));
    CHECK(proof.combination[1] == Approx(1));
    CHECK(proof.atom_economy == Approx(0.8559).epsilon(1e-4));
    CHECK(part_of(proof, "hydrogen bromide") == Approx(-1));
    CHECK(part_of(proof, "bromine") == 0);
}

TEST_CASE("a substance on both sides is netted: hydrogen bromide that comes back is not counted twice") {
    const std::string netted =
        "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water";
    const std::string overall =
        "2 acetanilide + 4 hydrogen bromide + 2 hydrogen peroxide -> 2 4-bromoacetanilide + 2 "
        "hydrogen bromide + 4 water";
    const OverallProof proof = prove(netted, overall, peroxide_charges, peroxide_reactions);
    CHECK(proof.proved);
    CHECK(proof.combination[0] == Approx(2));
    CHECK(proof.atom_economy == Approx(0.8559).epsilon(1e-4));
}

TEST_CASE("bromide and bromate five to one: 43.9 % as written, 67.1 % with the hydrogen bromide used again") {
    const std::string five_to_one =
        "6 acetanilide + 10 potassium bromide + 2 potassium bromate + 6 sulfuric acid -> "
        "6 4-bromoacetanilide + 6 hydrogen bromide + 6 potassium sulfate + 6 water";
    const Items reactions{reaction(from_bromate), reaction(bromination_equation),
                          reaction(exchange, R"("conversion": "0 %", "of": "hydrogen bromide")")};
    const OverallProof proof = prove(five_to_one, five_to_one, bromate_charges, reactions);
    CHECK(proof.proved);
    CHECK(proof.combination[0] == Approx(2));
    CHECK(proof.combination[1] == Approx(6));
    CHECK(proof.combination[2] == Approx(0).scale(1));
    CHECK(100 * proof.atom_economy == Approx(43.9).epsilon(1e-3));
    CHECK(100 * proof.best_atom_economy == Approx(67.1).epsilon(1e-3));
    // The better one is 6 ArH + 4 KBr + 2 KBrO3 + 3 H2SO4, here for one ArBr.
    CHECK(part_of(proof, "potassium bromide") == Approx(-4.0 / 6));
    CHECK(part_of(proof, "potassium bromate") == Approx(-2.0 / 6));
    CHECK(part_of(proof, "sulfuric acid") == Approx(-3.0 / 6));
    CHECK(part_of(proof, "hydrogen bromide") == Approx(0).scale(1));
}

TEST_CASE("an equation that no run of the reactions gives is not proved") {
    // Balanced, but no reaction of the step makes hypobromous acid.
    const OverallProof proof =
        prove(std::string(bromination_equation),
              "acetanilide + 2 bromine + water -> 4-bromoacetanilide + 2 hydrogen bromide + hypobromous acid",
              {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "20 mmol", "reagent"),
               charge("water", "10 mmol", "reagent")},
              {reaction(bromination_equation)});
    CHECK_FALSE(proof.proved);
    CHECK(proof.combination.empty());
}

TEST_CASE("reactions of later stages, such as a quench, may stay at none") {
    const Built built(route(
        "4-bromoacetanilide",
        {step("4-bromoacetanilide", "acetanilide", bromination_equation,
              {stage("reaction",
                     {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "11 mmol", "reagent")},
                     {reaction(bromination_equation)}),
               stage("workup",
                     {charge("sodium hydrogensulfite", "2 mmol", "quench"),
                      charge("water", "10 g", "drown-out")},
                     {reaction("bromine + sodium hydrogensulfite + water -> sodium hydrogensulfate + 2 "
                               "hydrogen bromide")})})}));
    const OverallProof proof = prove_overall(built.route.steps[0]);
    CHECK(proof.proved);
    CHECK(proof.combination == Combination{1.0, 0.0});
    CHECK(proof.best_atom_economy == Approx(proof.atom_economy));
}

TEST_CASE("atom economy of an equation") {
    const Built built(
        one_pot("4-bromoacetanilide", "acetanilide", bromination_equation,
                {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "10 mmol", "reagent")},
                {reaction(bromination_equation)}));
    const Step& step = built.route.steps[0];
    CHECK(atom_economy_of(step.overall, step.product) == Approx(214.062 / 294.974).epsilon(1e-6));
    CHECK(atom_economy_of({}, step.product) == 0.0);
}
