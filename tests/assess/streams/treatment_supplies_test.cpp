// SPDX-License-Identifier: MIT
// What making streams ready uses up follows the quench plan, and the stock list follows that.
#include "assess/streams/treatment_supplies.hpp"

#include "assess/stock/stock_list.hpp"
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <algorithm>

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
    plan.destroys = true;
    const QuenchRow* row = us_rules().quench.reducer_left("sodium-borohydride");
    REQUIRE(row != nullptr);
    plan.unreacted.reducers.push_back({us_rules().catalogue.find_substance("sodium borohydride"), row, 0.01});
    CHECK(grams_of(supplies(plan), "acetone") == doctest::Approx(0.04 * 58.08).epsilon(1e-3));
    plan.destroys = false; // the stream is stopped: nothing is done to it at a bench
    CHECK(supplies(plan).weighed.empty());
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
            if (plan.to_neutralise.empty() && !plan.destroys) {
                CHECK(found.weighed.empty());
                CHECK(found.unweighed.empty());
                ++untreated;
            }
        }
    }
    CHECK(neutralised > 8);
    CHECK(untreated > 5);
}
