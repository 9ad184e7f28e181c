// SPDX-License-Identifier: MIT
// Every metric: its declaration, and its value on one small route worked by hand.
#include "assess/metric_list.hpp"

#include "assess/worked_example.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <string>
#include <vector>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

const Catalogue& bench() {
    static const Catalogue catalogue = catalogue_of(
        {"acid | C2H4O2 | liquid | 1.05", "alcohol | C2H6O | liquid | 0.79", "ester | C4H8O2 | liquid | 0.90",
         "water | H2O | liquid | 1.00", "vitriol | H2SO4 | liquid | 1.84", "toluene | C7H8 | liquid | 0.87",
         "drier | MgSO4", "arene | C8H9NO", "bromine | Br2 | liquid | 3.1", "bromide | C8H8BrNO",
         "acid gas | HBr | gas", "chloride | NaCl"});
    return catalogue;
}

/// acid + alcohol -> ester + water, with everything that a figure can ask for.
std::string esterification() {
    return route(
        "ester",
        {step(
            "ester", "acid", "acid + alcohol -> ester + water",
            {stage("reaction",
                   {charge("acid", "60.052 g", "substrate"), charge("alcohol", "92.138 g", "reagent"),
                    charge("vitriol", "0.9808 g", "catalyst"), charge("toluene", "20 g", "solvent")},
                   {reaction("acid + alcohol -> ester + water")}, {},
                   R"("time": "2 h", "energy": "30 kJ", "cooling_water": "5 L")"),
             stage(
                 "workup", {charge("water", "100 g", "wash"), charge("water", "50 g", "drown-out")}, {},
                 {R"({"by": "extraction", "to": "aqueous layer", "leaves": ["water", "alcohol", "vitriol"]})"},
                 R"("time": "0.5 h", "energy": "6 kJ")"),
             stage("purification",
                   {charge("toluene", "10 g", "rinse"), charge("drier", "4 g", "drying agent")}, {},
                   {R"({"by": "distillation", "to": "distillate", "leaves": ["toluene"]})"})},
            R"("isolated": {"yield": "80 %"})")},
        R"("reuse": [{"substance": "toluene", "from": {"step": "ester", "stream": "distillate"}, "to": "ester", "fraction": "90 %"}],
"coproducts": [{"substance": "water"}])");
}

} // namespace

TEST_CASE("every metric on an esterification worked by hand") {
    // Molar masses: acid 60.052, alcohol 46.069, ester 88.106, water 18.015, vitriol 98.07 g/mol.
    // 1.000 mol of acid and 2.000 mol of alcohol can give 1 mol, 88.106 g of ester; 80 % are 70.4848 g.
    // Put in: 60.052 + 92.138 + 0.9808 + 20 + 100 + 50 + 10 + 4 = 337.1708 g; 27 of the 30 g of toluene come
    // back, 18 for the reaction and 9 for the rinse: 310.1708 g net.
    const Built built(esterification(), bench());
    const MassFigures f(built.route, {bench().find_substance("water")});
    const double p = 70.4848;
    const double net = 310.1708;
    struct Expected {
        const char* id;
        double value;
    };
    const std::vector<Expected> table{
        {"yield", 80},
        {"theoretical_yield", 88.106},
        {"isolated_mass", p},
        {"waste_per_run", 239.686}, // 310.1708 - 70.4848
        // 88.106 of 106.121 g/mol; with its water used, all of it
        {"atom_economy", 83.02410},
        {"atom_economy_gross", 83.02410},
        {"atom_economy_with_coproduct", 100},
        {"stoichiometric_e_factor", 18.015 / 88.106},
        {"carbon_economy", 100},              // four atoms of four
        {"carbon_efficiency", 100 * 3.2 / 6}, // 0.8 mol x 4 of 1 mol x 2 + 2 mol x 2
        {"stoichiometric_factor", 152.190 / 106.121},
        {"reaction_mass_efficiency", 100 * p / 152.190},
        {"experimental_atom_economy", 100 * 88.106 / 152.190},
        {"optimum_efficiency", 80 * 106.121 / 152.190},
        {"effective_mass_yield", 100 * p / (net - 150)}, // water is benign here
        {"reactants_e_factor", 152.190 / p - 1},
        {"simple_e_factor", (152.190 + 0.9808 + 4) / p - 1},
        {"e_factor_without_water", (net - 150) / p - 1},
        {"complete_e_factor", net / p - 1},
        {"process_mass_intensity", net / p},
        {"process_mass_intensity_gross", 337.1708 / p},
        {"mass_intensity", (net - 150) / p},
        {"mass_productivity", 100 * p / net},
        {"pmi_reactants_reagents_catalysts", 153.1708 / p},
        {"pmi_reaction_solvent", 2 / p},
        {"pmi_workup_and_purification", (1 + 4) / p},
        {"pmi_water", 150 / p},
        {"pmi_reaction_stages", 155.1708 / p},
        {"pmi_workup_stages", 150 / p},
        {"pmi_purification_stages", 5 / p},
        {"pmi_without_drown_out_and_rinse", (net - 50) / p},
        {"solvent_intensity", 3 / p},
        {"water_intensity", 150 / p},
        // the aqueous layer: 168.015 g of water, 46.069 g of alcohol, 0.9808 g of vitriol
        {"waste_water_intensity", 215.0648 / p},
        {"energy_intensity", 36 / p},
        {"cooling_water_intensity", 5000 / p},
        {"time_intensity", 2.5 / p},
        // 60.052/1.05 + 92.138/0.79 + 0.9808/1.84 + 20/0.87 = 197.3453 mL for 2 h
        {"space_time_yield", p / (0.1973453 * 2)},
        {"volume_productivity", p / 0.3473453}, // with 150 mL of water, before the layers part
        {"turnover_number", 0.8 / 0.010001},    // 0.9808 g / 98.07
        {"turnover_frequency", 0.4 / 0.010001},
        {"bromine_handled", 0},
        {"bromine_carried", 0},
        {"bromine_ceiling", 0},
    };
    for (const Expected& expected : table) {
        CAPTURE(std::string(expected.id));
        REQUIRE(metric_index(expected.id) >= 0);
        CHECK(f[expected.id] == Approx(expected.value).epsilon(2e-5));
    }
    const std::set<std::string> none{"bromine_economy", "nitrogen_economy", "chlorine_economy"};
    for (const std::string& id : none)
        CHECK(std::isnan(f[id]));
    CHECK(table.size() + none.size() == all_metrics().size()); // no metric without a number worked by hand
}

TEST_CASE("elements and bromine on a bromination worked by hand") {
    // arene C8H9NO 135.166, bromine 159.808, bromide C8H8BrNO 214.062, acid gas 80.912 g/mol.
    // 10 mmol of arene, 11 mmol of bromine, 75 %: 1.605465 g.
    const Worked example(
        one_pot("bromide", "arene", "arene + bromine -> bromide + acid gas",
                {charge("arene", "10 mmol", "substrate"), charge("bromine", "11 mmol", "reagent")},
                {reaction("arene + bromine -> bromide + acid gas")}, R"("isolated": {"yield": "75 %"})"),
        bench());
    CHECK(example["bromine_economy"] == Approx(50));
    CHECK(example["nitrogen_economy"] == Approx(100));
    CHECK(example["carbon_economy"] == Approx(100));
    CHECK(std::isnan(example["chlorine_economy"]));
    CHECK(example["atom_economy"] == Approx(100 * 214.062 / 294.974).epsilon(1e-6));
    CHECK(std::isnan(example["atom_economy_with_coproduct"]));
    CHECK(std::isnan(example["turnover_number"]));
    CHECK(std::isnan(example["time_intensity"]));
    CHECK(std::isnan(example["energy_intensity"]));
    CHECK(std::isnan(example["space_time_yield"]));
    CHECK(example["complete_e_factor"] == Approx((1.35166 + 1.757888 - 1.605465) / 1.605465).epsilon(1e-5));
}

TEST_CASE("bromine in the bottle, in the reagent, in the flask") {
    // In the embedded catalogue bromine is free, N-bromosuccinimide carries one, a tribromide is and carries
    // one.
    const auto figures = [](std::string_view reagent, std::string_view overall, const Items& reactions) {
        return Worked(
            one_pot("4-bromoacetanilide", "acetanilide", overall,
                    {charge("acetanilide", "10 mmol", "substrate"), charge(reagent, "10.5 mmol", "reagent"),
                     charge("hydrogen bromide", "0.1 mmol", "trace")},
                    reactions, R"("isolated": {"yield": "80 %"})"));
    };
    const double per_gram = 0.0105 * 159.808 / (0.008 * 214.062); // 10.5 mmol of Br2 for 1.7125 g
    constexpr std::string_view bromination = "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide";
    const Worked bottle = figures("bromine", bromination, {reaction(bromination)});
    CHECK(bottle["bromine_handled"] == Approx(per_gram));
    CHECK(bottle["bromine_carried"] == 0);
    CHECK(bottle["bromine_ceiling"] == Approx(per_gram));

    const Worked imide = figures(
        "N-bromosuccinimide", "acetanilide + N-bromosuccinimide -> 4-bromoacetanilide + succinimide",
        {reaction("N-bromosuccinimide + hydrogen bromide -> bromine + succinimide"), reaction(bromination)});
    CHECK(imide["bromine_handled"] == 0);
    CHECK(imide["bromine_carried"] == Approx(per_gram));
    CHECK(imide["bromine_ceiling"] ==
          Approx(per_gram * 0.1 / 10.5)); // as much as the trace can free at one time

    const Worked tribromide = figures(
        "pyridinium tribromide",
        "acetanilide + pyridinium tribromide -> 4-bromoacetanilide + pyridinium bromide + hydrogen bromide",
        {reaction("pyridinium tribromide -> pyridinium bromide + bromine"), reaction(bromination)});
    CHECK(tribromide["bromine_handled"] == 0);
    CHECK(tribromide["bromine_carried"] == Approx(per_gram));
    CHECK(tribromide["bromine_ceiling"] == Approx(per_gram));
}

TEST_CASE("classes of an input: reactant, water, solvent, aid") {
    const Worked example(
        one_pot("4-bromoacetanilide", "acetanilide",
                "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water",
                {charge("acetanilide", "10 mmol", "substrate"),
                 charge("hydrogen bromide 33 % in acetic acid", "3 g", "reagent"),
                 charge("hydrogen peroxide 30 %", "1.474 g", "oxidant"),
                 charge("sulfuric acid", "0.5 g", "acid"), charge("sodium chloride", "0.2 g", "wash")},
                {reaction("hydrogen peroxide + 2 hydrogen bromide -> bromine + 2 water"),
                 reaction("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide")}));
    // Reactants: acetanilide, 0.99 g of hydrogen bromide, 0.4422 g of peroxide. The acid stands in no
    // equation: an aid.
    CHECK(example.figures.totals.reactants_gross == Approx(1.35166 + 0.99 + 0.4422));
    CHECK(example.figures.totals.reactants_and_aids == Approx(1.35166 + 0.99 + 0.4422 + 0.5));
    CHECK(example.figures.totals.water == Approx(1.474 * 0.70));
    CHECK(example.figures.totals.solvents == Approx(2.01 + 0.2)); // the carrier of the acid, and a neat wash
}

TEST_CASE("overall yields: along the longest line, and none for steps in a loop") {
    const Catalogue isomers =
        catalogue_of({"A | C5H10", "B | C5H10", "C | C5H10", "D | C5H10", "J | C10H20", "P | C10H20"});
    const auto isomerise = [](std::string_view from, std::string_view to, std::string_view yield,
                              const Items& more = {}) {
        const std::string equation = std::string(from) + " -> " + std::string(to);
        Items charges{charge(from, "10 mmol", "substrate")};
        charges.insert(charges.end(), more.begin(), more.end());
        return step(to, from, equation, {stage("reaction", charges, {reaction(equation)})},
                    R"("isolated": {"yield": ")" + std::string(yield) + R"("})");
    };
    const std::string join =
        step("J", "B", "B + D -> J",
             {stage("reaction", {charge("B", "10 mmol", "substrate"), charge("D", "10 mmol", "reagent")},
                    {reaction("B + D -> J")})},
             R"("isolated": {"yield": "50 %"})");
    // A -> B (90 %), C -> D (80 %), B + D -> J (50 %): both lines are equally long, the poorer one counts.
    CHECK(Worked(route("J", {isomerise("A", "B", "90 %"), isomerise("C", "D", "80 %"), join}),
                 isomers)["yield"] == Approx(40));
    // J -> P makes one line longer only when it is not the last: here it is the last step of all.
    CHECK(Worked(route("P", {isomerise("A", "B", "90 %"), isomerise("C", "D", "80 %"), join,
                             isomerise("J", "P", "50 %")}),
                 isomers)["yield"] == Approx(20));
    const Worked loop(route("C", {isomerise("A", "B", "90 %", {charge("C", "1 mmol", "solvent")}),
                                  isomerise("B", "C", "80 %")}),
                      isomers);
    CHECK(std::isnan(loop["yield"]));
    CHECK(std::isnan(loop["theoretical_yield"]));
    CHECK(std::isfinite(loop["process_mass_intensity"]));
}

TEST_CASE(
    "energy and cooling water follow the scale of each step, and one silent step makes the sum unknown") {
    const Catalogue isomers = catalogue_of({"A | C5H10", "B | C5H10", "C | C5H10"});
    const auto two = [&](std::string_view second) {
        return Worked(
            route("C", {step("B", "A", "A -> B",
                             {stage("reaction", {charge("A", "10 mmol", "substrate")}, {reaction("A -> B")},
                                    {}, R"("energy": "3 kJ", "time": "1 h", "cooling_water": "1 L")")}),
                        step("C", "B", "B -> C",
                             {stage("reaction", {charge("B", "20 mmol", "substrate")}, {reaction("B -> C")},
                                    {}, second)})}),
            isomers);
    };
    const Worked both = two(R"("energy": "1 kJ", "time": "30 min", "cooling_water": "500 mL")");
    const double p = 0.020 * 70.135;
    CHECK(both["energy_intensity"] == Approx((2 * 3 + 1) / p).epsilon(1e-5));
    CHECK(both["cooling_water_intensity"] == Approx((2 * 1000 + 500) / p).epsilon(1e-5));
    CHECK(both["time_intensity"] == Approx(1.5 / p).epsilon(1e-5)); // a larger batch takes as long
    CHECK(std::isnan(both["space_time_yield"]));
    const Worked silent = two("");
    CHECK(std::isnan(silent["energy_intensity"]));
    CHECK(std::isnan(silent["time_intensity"]));
}

TEST_CASE("every metric is declared in full") {
    std::set<std::string> ids, names;
    for (const Metric* metric : all_metrics()) {
        const std::string id(metric->id);
        CAPTURE(id);
        CHECK(ids.insert(id).second);
        CHECK(names.insert(std::string(metric->name)).second);
        CHECK(std::all_of(id.begin(), id.end(), [](char c) { return (c >= 'a' && c <= 'z') || c == '_'; }));
        CHECK(
            std::set<std::string>{"", "%", "g", "g/g", "kJ/g", "mL/g", "h/g", "g/(L h)", "g/L", "1/h"}.count(
                std::string(metric->unit)) == 1);
        CHECK_FALSE(metric->boundary.empty());
        CHECK_FALSE(metric->reference.empty());
        CHECK_FALSE(words(metric->group).empty());
        CHECK(metric->decimals >= 0);
        CHECK(metric->decimals <= 3);
        CHECK((metric->derive == nullptr) == metric->from.empty());
        CHECK((metric->derive == nullptr) == metric->formula.empty());
        CHECK((metric->derive == nullptr) != metric->above.empty());
        CHECK((metric->unit == "%") == (metric->factor == 100.0 || metric->derive != nullptr));
        for (const Term& term : metric->above)
            CHECK_FALSE(term.words.empty());
        for (const Term& term : metric->below)
            CHECK_FALSE(term.words.empty());
        for (const std::string_view source : metric->from) // what a figure is derived from stands before it
            CHECK((metric_index(source) >= 0 && metric_index(source) < metric_index(metric->id)));
    }
    CHECK(metric_index("no_such_figure") == -1);
}

TEST_CASE("a line below of nothing, or an unknown total, gives no value") {
    Totals totals;
    const Metric& pmi = *all_metrics()[static_cast<std::size_t>(metric_index("process_mass_intensity"))];
    totals.inputs = 5;
    CHECK(std::isnan(ratio(pmi, totals)));
    totals.product = 2;
    CHECK(ratio(pmi, totals) == Approx(2.5));
    totals.inputs = std::numeric_limits<double>::quiet_NaN();
    CHECK(std::isnan(ratio(pmi, totals)));
}
