// SPDX-License-Identifier: MIT
// What making streams ready uses up follows the quench plan, and the stock list follows that.
#include "assess/streams/treatment_supplies.hpp"

#include "assess/stock/stock_list.hpp"
#include "stream_case.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <utility>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

TreatmentSupplies supplies(const QuenchPlan& plan) {
    return treatment_supplies(plan, us_rules().quench, us_rules().catalogue);
}

double grams_of(const TreatmentSupplies& found, const char* name) {
    for (const TreatmentSupply& one : found.weighed)
        if (one.material->name == name) return one.grams;
    return 0;
}

bool holds(const std::vector<std::string>& list, const char* words) {
    return std::find(list.begin(), list.end(), words) != list.end();
}

} // namespace

TEST_CASE("one mole of acid takes one mole of hydrogencarbonate, 84.01 g (CRC Handbook, from memory)") {
    const WasteOf one("routes/4-bromoacetanilide/A1.json", us_rules());
    const QuenchPlan& plan = one.waste.quenches.front();
    REQUIRE(plan.to_neutralise.size() == 1);
    const TreatmentSupplies found = supplies(plan);
    CHECK(grams_of(found, "sodium hydrogencarbonate") ==
          doctest::Approx(84.01 * plan.to_neutralise.front().acid()).epsilon(1e-4));
    // 2.60 mmol bromine take 5.21 mmol electrons; the 1.07 g of 9.35 % disulfite planned give 2.11 mmol, and
    // 3.10 mmol are 0.147 g disulfite (190.1 g/mol, 4 electrons), with a fifth of excess 0.177 g.
    const double share =
        catalogue().find_material("sodium metabisulfite 10 % w/v")->components.front().mass_fraction;
    CHECK(share * grams_of(found, "sodium metabisulfite 10 % w/v") == doctest::Approx(0.177).epsilon(0.02));
    CHECK(found.unweighed == std::vector<std::string>{"starch-iodide paper", "pH paper"});
}

TEST_CASE(
    "borohydride that is left takes four times as much acetone, 58.08 g/mol (CRC Handbook, from memory)") {
    QuenchPlan plan;
    const QuenchRow* row = us_rules().quench.reducer_left("sodium-borohydride");
    REQUIRE(row != nullptr);
    plan.destroyed_unreacted.reducers.push_back(
        {us_rules().catalogue.find_substance("sodium borohydride"), row, 0.01});
    CHECK(grams_of(supplies(plan), "acetone") == doctest::Approx(0.04 * 58.08).epsilon(1e-3));
    std::swap(plan.unreacted,
              plan.destroyed_unreacted); // the stream is stopped: nothing is done to it at a bench
    CHECK(supplies(plan).weighed.empty());
}

TEST_CASE("acetone that a route charges as its quench is not asked for again") {
    using namespace routeweigh::test;
    const std::string reduction =
        "4 cyclohexanone + sodium borohydride + 4 water -> 4 cyclohexanol + boric acid + sodium hydroxide";
    const auto acetone_beside = [&](std::string_view charged) {
        const Built pot(
            test::route("cyclohexanol", {step("cyclohexanol", "cyclohexanone", reduction,
                                              {stage("reaction",
                                                     {charge("cyclohexanone", "20 mmol", "substrate"),
                                                      charge("sodium borohydride", "10 mmol", "reagent"),
                                                      charge("water", "5 g", "reagent")},
                                                     {reaction(reduction)}),
                                               stage("workup", {charge("acetone", charged, "quench")})})}));
        const QuenchPlan plan = assess_waste(pot.route, us_rules()).quenches.at(0);
        CHECK(plan.destroys());
        return grams_of(supplies(plan), "acetone");
    };
    // 20 mmol ketone take 5 of the 10 mmol; four times the other 5 mmol are 20 mmol, 1.162 g.
    CHECK(acetone_beside("1 g") == doctest::Approx(0.020 * 58.08 - 1).epsilon(1e-3));
    CHECK(acetone_beside("20 mmol") == 0);
    CHECK(acetone_beside("2 g") == 0);
}

TEST_CASE("what a stop ends is neither quenched nor fetched for") {
    using namespace routeweigh::test;
    const std::string reduction =
        "4 cyclohexanone + sodium borohydride + 4 water -> 4 cyclohexanol + boric acid + sodium hydroxide";
    // Half of the borohydride leaves with the first liquor; cyanide stops the second, which holds the rest.
    const Built pot(route(
        "cyclohexanol",
        {step("cyclohexanol", "cyclohexanone", reduction,
              {stage("reaction",
                     {charge("cyclohexanone", "20 mmol", "substrate"),
                      charge("sodium borohydride", "10 mmol", "reagent"), charge("water", "5 g", "reagent")},
                     {reaction(reduction)},
                     {filtration("first liquor",
                                 R"("leaves": {"sodium borohydride": "50 %", "water": "100 %"})")}),
               stage("workup", {charge("sodium cyanide", "1 g", "wash"), charge("water", "5 g", "wash")}, {},
                     {filtration("second liquor", R"("keeps": ["cyclohexanol"])")})})}));
    const QuenchPlan plan = assess_waste(pot.route, us_rules()).quenches.at(0);
    REQUIRE(plan.stopped.size() == 1);
    CHECK(plan.stopped.front().starts_with("second liquor: "));
    // 20 mmol ketone take 5 of the 10 mmol; half of the other 5 take four times as much acetone, 10 mmol.
    CHECK(grams_of(supplies(plan), "acetone") == doctest::Approx(0.010 * 58.08).epsilon(1e-3));
    const auto needs = [](const std::string& line) {
        return line.find("2.5 mmol needs 10 mmol") != std::string::npos;
    };
    CHECK(std::any_of(plan.order.begin(), plan.order.end(), needs));
}

TEST_CASE("a reagent that is a solution is weighed as the solution, 34.01 g/mol H2O2 (from memory)") {
    // Peroxide turns nitrite into nitrate, one mole a mole (common practice, no source).
    QuenchRow row;
    row.name = "nitrite";
    row.species = "NaNO2";
    row.equation = QuenchEquation("NaNO2 + H2O2 -> NaNO3 + H2O");
    row.reagent = "H2O2";
    row.reagent_name = "hydrogen peroxide 30 %";
    QuenchPlan plan;
    plan.destroyed.reducers.push_back({&substance("sodium nitrite"), &row, 0.01});
    CHECK(grams_of(supplies(plan), "hydrogen peroxide 30 %") ==
          doctest::Approx(0.01 * 34.015 / 0.30).epsilon(1e-3));
    row.reagent_name = "sulfamic acid solution of the house"; // no bottle of the catalogue
    CHECK(supplies(plan).weighed.empty());
    CHECK(supplies(plan).unweighed ==
          std::vector<std::string>{"sulfamic acid solution of the house (destroys nitrite)"});
}

TEST_CASE("what supplies are for names the step where a route has several, and what quenches as it is") {
    QuenchPlan plan;
    StreamToNeutralise alkaline;
    alkaline.stream = "filtrate and wash";
    alkaline.strong_base = 0.1;
    plan.to_neutralise.push_back(alkaline);
    const auto words = [&](std::string_view step) {
        return treatment_supplies(plan, us_rules().quench, us_rules().catalogue, step).unweighed;
    };
    CHECK(words("").front() == "dilute acid (citric, acetic or hydrochloric) for filtrate and wash");
    CHECK(words("benzil").front() ==
          "dilute acid (citric, acetic or hydrochloric) for benzil: filtrate and wash");
    const WasteOf a1(a_route("A1"), us_rules());
    const TreatmentSupplies found =
        treatment_supplies(a1.quench(), us_rules().quench, us_rules().catalogue, "bromination");
    for (const TreatmentSupply& one : found.weighed)
        if (one.material->name == "sodium hydrogencarbonate")
            CHECK(one.uses == std::vector<std::string>{"base for bromination: filtrate and washes"});
    // Cyclohexene adds bromine: it is the quench of that route and no reducer.
    QuenchPlan alkene = WasteOf("routes/2-3-dibromo-3-phenylpropanoic-acid/B1.json", us_rules()).quench();
    REQUIRE(alkene.planned.front().reducer != nullptr);
    REQUIRE(alkene.destroys());
    alkene.extra_material = 1; // g short
    const TreatmentSupplies more = supplies(alkene);
    REQUIRE(grams_of(more, "cyclohexene") > 0);
    CHECK(more.weighed.front().uses == std::vector<std::string>{"more of the quench to have ready"});
}

TEST_CASE("every stream that takes base or acid has it on the list, and pH paper with it") {
    int neutralised = 0, untreated = 0;
    for (const std::string& path : shipped_routes()) {
        const WasteOf one(path, us_rules());
        for (const QuenchPlan& plan : one.waste.quenches) {
            INFO(path << ": " << plan.step_id);
            const TreatmentSupplies found = supplies(plan);
            CHECK(holds(found.unweighed, "pH paper") == !plan.to_neutralise.empty());
            double base = 0;
            for (const StreamToNeutralise& stream : plan.to_neutralise)
                if (stream.usual_base() != nullptr) base += stream.usual_base()->grams;
            CHECK(grams_of(found, "sodium hydrogencarbonate") == doctest::Approx(base));
            neutralised += base > 0 ? 1 : 0;
            if (plan.to_neutralise.empty() && !plan.destroys()) {
                CHECK(found.weighed.empty());
                CHECK(found.unweighed.empty());
                ++untreated;
            }
        }
    }
    CHECK(neutralised > 8);
    CHECK(untreated > 5);
}
