// SPDX-License-Identifier: MIT
// Identities between the mass figures, on 10,000 random routes (fewer under sanitizers).
//
// The identities are those of the definitions: mass balance, and the algebra of Andraos (Org. Process Res.
// Dev. 2005, 9, 149) and Constable et al. (Green Chem. 2002, 4, 521), both remembered.
#include "assess/figures_of.hpp"
#include "support/random_route.hpp"
#include "support/rounds.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

bool near(double a, double b, double tolerance = 1e-9) {
    if (std::isnan(a) || std::isnan(b)) return std::isnan(a) && std::isnan(b);
    return std::abs(a - b) <= tolerance * std::max({1.0, std::abs(a), std::abs(b)});
}

/// Adds a new substance that takes part in nothing to some stage.
void add_input(RandomRoute& random, std::mt19937& draw) {
    Substance& substance = random.substances.emplace_back();
    substance.id = substance.name = "bystander";
    substance.formula = parse_formula("C7H8");
    substance.molar_mass = molar_mass(substance.formula);
    substance.phase =
        std::bernoulli_distribution(0.5)(draw) ? Substance::Phase::liquid : Substance::Phase::solid;
    Material& material = random.materials.emplace_back();
    material.name = "bystander";
    material.components.push_back({&substance, 1.0, false});
    auto& steps = random.route.steps;
    auto& stages = steps[std::uniform_int_distribution<std::size_t>(0, steps.size() - 1)(draw)].stages;
    Charge charge;
    charge.material = &material;
    charge.amount.value = std::uniform_real_distribution<double>(0.1, 20.0)(draw);
    charge.amount.unit = "g";
    charge.role = &all_roles()[std::uniform_int_distribution<std::size_t>(0, all_roles().size() - 1)(draw)];
    stages[std::uniform_int_distribution<std::size_t>(0, stages.size() - 1)(draw)].charges.push_back(charge);
}

bool is_intensity(const Metric& metric) {
    return metric.id != "theoretical_yield" && metric.id != "isolated_mass" && metric.id != "waste_per_run" &&
           metric.group != FigureGroup::utilities;
}

} // namespace

TEST_CASE("waste counted from what enters equals waste counted from what leaves") {
    std::mt19937 draw(51);
    for (int round = 0; round < rounds(10000); ++round) {
        CAPTURE(round);
        const auto random = random_route(draw);
        const MassFigures f(random->route);
        REQUIRE(near(f["complete_e_factor"], f.totals.waste / f.totals.product));
        REQUIRE(near(f["waste_per_run"], f["complete_e_factor"] * f["isolated_mass"]));
        REQUIRE(near(f["process_mass_intensity"], f["complete_e_factor"] + 1));
        REQUIRE(near(f["process_mass_intensity_gross"],
                     1 + f["complete_e_factor"] + f.totals.recovered / f.totals.product));
        REQUIRE(near(f["mass_intensity"], f["e_factor_without_water"] + 1));
        REQUIRE(near(f["mass_productivity"] * f["process_mass_intensity"], 100));
        // Each input stands in exactly one part.
        REQUIRE(near(f["pmi_reactants_reagents_catalysts"] + f["pmi_reaction_solvent"] +
                         f["pmi_workup_and_purification"] + f["pmi_water"],
                     f["process_mass_intensity"]));
        REQUIRE(near(f["pmi_reaction_stages"] + f["pmi_workup_stages"] + f["pmi_purification_stages"],
                     f["process_mass_intensity"]));
        REQUIRE(near(f["mass_intensity"] + f["pmi_water"], f["process_mass_intensity"]));
        REQUIRE(near(f["simple_e_factor"] + f["solvent_intensity"], f["e_factor_without_water"]));
        REQUIRE(near(f["water_intensity"], f["pmi_water"]));
        REQUIRE(f["process_mass_intensity_gross"] >= f["process_mass_intensity"] - 1e-9);
        REQUIRE(f["pmi_without_drown_out_and_rinse"] <= f["process_mass_intensity"] + 1e-9);
        REQUIRE(f["effective_mass_yield"] >= 100 / f["process_mass_intensity"] - 1e-9);
    }
}

TEST_CASE("equation figures: net is never below gross, and the stoichiometric E-factor follows from net") {
    std::mt19937 draw(52);
    int improved = 0;
    for (int round = 0; round < rounds(10000); ++round) {
        CAPTURE(round);
        const auto random = random_route(draw);
        const MassFigures f(random->route);
        const double net = f["atom_economy"], gross = f["atom_economy_gross"];
        REQUIRE(net >= gross - 1e-9);
        REQUIRE(net <= 100 + 1e-9);
        REQUIRE(gross > 0);
        if (net > gross + 1e-6) ++improved;
        REQUIRE(near(f["stoichiometric_e_factor"], 100 / net - 1));
        // Mass balance of the net equation.
        double out = 0.0;
        for (const auto& part : f.net.outputs)
            out += part.moles * part.substance->molar_mass;
        REQUIRE(near(out + f.totals.formula_product, f.totals.formula_inputs));
        for (const std::string_view id :
             {"carbon_economy", "nitrogen_economy", "chlorine_economy", "bromine_economy"})
            REQUIRE((std::isnan(f[id]) || (f[id] > 0 && f[id] <= 100 + 1e-9)));
    }
    CHECK(improved > rounds(20));
}

TEST_CASE("one step: RME = AE x yield / SF, and what follows from it") {
    std::mt19937 draw(53);
    for (int round = 0; round < rounds(10000); ++round) {
        CAPTURE(round);
        // Without air, of which only what was used is charged, so that it is never enough for the full yield.
        const auto random =
            random_route(draw, {.most_steps = 1, .reuse = false, .seeds = false, .air = false});
        const MassFigures f(random->route);
        const double rme = f["reaction_mass_efficiency"], ae = f["atom_economy"];
        REQUIRE(near(rme, ae * f["yield"] / 100 / f["stoichiometric_factor"]));
        REQUIRE(near(f["reactants_e_factor"], 100 / rme - 1));
        REQUIRE(near(f["experimental_atom_economy"] * f["yield"] / 100, rme));
        REQUIRE(near(f["optimum_efficiency"], f["yield"] / f["stoichiometric_factor"]));
        REQUIRE(f["stoichiometric_factor"] >= 1 - 1e-9);
        REQUIRE(rme <= ae + 1e-9);
        REQUIRE(f["stoichiometric_e_factor"] <= f["reactants_e_factor"] + 1e-9);
        REQUIRE(f["process_mass_intensity"] >= 100 / rme - 1e-9);
        REQUIRE(f["carbon_efficiency"] <= 100 + 1e-9);
        REQUIRE(near(f["yield"], 100 * f["isolated_mass"] / f["theoretical_yield"]));
    }
}

TEST_CASE("the size of the batches changes no intensity") {
    std::mt19937 draw(54);
    for (int round = 0; round < rounds(10000); ++round) {
        CAPTURE(round);
        const auto random = random_route(draw);
        const MassFigures before(random->route);
        resize_steps(random->route, draw);
        const MassFigures after(random->route);
        REQUIRE_FALSE(near(before["isolated_mass"], after["isolated_mass"]));
        for (const Metric* metric : all_metrics()) {
            if (!is_intensity(*metric)) continue;
            CAPTURE(std::string(metric->id));
            REQUIRE(near(before[metric->id], after[metric->id], 1e-8));
        }
    }
}

TEST_CASE("the order of listing changes no figure") {
    std::mt19937 draw(55);
    for (int round = 0; round < rounds(3000); ++round) {
        CAPTURE(round);
        const auto random = random_route(draw);
        const MassFigures before(random->route);
        shuffle_listing(random->route, draw);
        const MassFigures after(random->route);
        for (const Metric* metric : all_metrics()) {
            CAPTURE(std::string(metric->id));
            REQUIRE(near(before[metric->id], after[metric->id]));
        }
    }
}

TEST_CASE("a further input never lowers the mass intensity") {
    std::mt19937 draw(56);
    for (int round = 0; round < rounds(3000); ++round) {
        CAPTURE(round);
        const auto random = random_route(draw, {.most_steps = 4, .reuse = round % 2 == 0, .seeds = false});
        for (Step& step : random->route.steps) // what is isolated stays what it is
            for (Stage& stage : step.stages)
                stage.separations.erase(
                    std::remove_if(stage.separations.begin(), stage.separations.end(),
                                   [&](const Separation&) { return stage.phase == Phase::reaction; }),
                    stage.separations.end());
        const MassFigures before(random->route);
        add_input(*random, draw);
        const MassFigures after(random->route);
        REQUIRE(after["process_mass_intensity_gross"] > before["process_mass_intensity_gross"]);
        REQUIRE(after["process_mass_intensity"] >= before["process_mass_intensity"] - 1e-9);
    }
}

TEST_CASE("when all but reactants is benign, the effective mass yield is no smaller than the RME") {
    std::mt19937 draw(57);
    for (int round = 0; round < rounds(2000); ++round) {
        CAPTURE(round);
        const auto random = random_route(draw, {.most_steps = 4, .reuse = false});
        const FlatRoute flat(random->route);
        std::set<const Substance*> benign;
        for (const Inflow& inflow : flat.inflows())
            if (!inflow.reactant) benign.insert(inflow.substance);
        const MassFigures f(random->route, benign);
        REQUIRE((std::isnan(f["effective_mass_yield"]) ||
                 f["effective_mass_yield"] >= f["reaction_mass_efficiency"] - 1e-9));
    }
}

TEST_CASE("contributions add up to their total") {
    std::mt19937 draw(58);
    for (int round = 0; round < 500; ++round) {
        CAPTURE(round);
        const auto random = random_route(draw);
        const MassFigures f(random->route);
        for (const auto member : {&Totals::inputs, &Totals::inputs_gross, &Totals::waste, &Totals::water,
                                  &Totals::solvents, &Totals::part_reactants, &Totals::formula_inputs,
                                  &Totals::formula_inputs_gross, &Totals::carbon_inputs}) {
            double sum = 0.0;
            for (const Contribution& part : f.map.contributions(member, f.evaluation))
                sum += part.value;
            REQUIRE(near(sum, f.totals.*member));
        }
    }
}
