// SPDX-License-Identifier: MIT
// Heat, power, water and time of stages, against arithmetic that stands beside each check.
#include "assess/utilities/utility_estimate.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace routeweigh;
using namespace routeweigh::test;
using namespace routeweigh::utilities;

namespace {

const UtilityData& data() {
    static const UtilityData read = read_utility_data(Catalogue::embedded());
    return read;
}

RouteUse use_of(const Built& built) {
    return estimate_use(built.flat, built.nominal, data());
}

/// Acetanilide and bromine in ethanol with this stage for the reaction.
std::string brominated(std::string_view stage_more, std::string_view separations_of = "filtrate") {
    return route(
        "4-bromoacetanilide",
        {step("4-bromoacetanilide", "acetanilide",
              "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide",
              {stage("reaction",
                     {charge("acetanilide", "1 g", "substrate"), charge("bromine", "1.2 g", "reagent"),
                      charge("ethanol", "20 g", "solvent")},
                     {reaction("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide")},
                     {filtration(separations_of, R"("keeps": ["4-bromoacetanilide"])")}, stage_more)})});
}

} // namespace

TEST_CASE("boiling off 50 mL of a solvent from 22 degC takes the heat that capacity and vaporisation say") {
    // Handbook densities, boiling points and heats, remembered; 50 mL x density x (cp x rise + heat of
    // vaporisation).
    struct Row {
        const char* name;
        double density, boiling, kilojoules;
    };
    for (const Row& row : {Row{"ethyl acetate", 0.900, 77.1, 21.1}, Row{"dichloromethane", 1.326, 39.6, 23.3},
                           Row{"acetone", 0.790, 56.1, 22.7}, Row{"hexane", 0.659, 68.7, 14.5},
                           Row{"cyclohexane", 0.779, 80.7, 18.1}, Row{"toluene", 0.867, 110.6, 22.2},
                           Row{"ethanol", 0.789, 78.3, 38.4}, Row{"water", 0.998, 100.0, 129.0}}) {
        CAPTURE(row.name);
        const LiquidHeat* liquid = data().find(*Catalogue::embedded().find_substance(row.name));
        REQUIRE(liquid != nullptr);
        const double grams = 50.0 * row.density;
        const double heat = grams * (liquid->capacity * (row.boiling - 22.0) + liquid->vaporisation) / 1000.0;
        CHECK(heat == doctest::Approx(row.kilojoules).epsilon(0.005));
    }
}

TEST_CASE("a cold stage draws nothing, a warm one its plate, a boiling one its condenser") {
    CHECK(use_of(Built(brominated(R"("temperature": "25 degC", "time": "30 min")"))).socket.usual == 0.0);

    const RouteUse warm = use_of(Built(brominated(R"("temperature": "60 degC", "time": "30 min")")));
    CHECK(warm.socket.usual == doctest::Approx(203 * 1.8)); // W x 1800 s, in kJ
    CHECK(warm.socket.low == doctest::Approx(203 * 0.9));   // half of it
    CHECK(warm.cooling.usual == 0.0);

    const RouteUse boiling = use_of(Built(brominated(R"("temperature": "78 degC", "time": "30 min")")));
    CHECK(boiling.cooling.usual == doctest::Approx(30)); // 1 L/min
    CHECK(boiling.cooling.low == doctest::Approx(15));
    CHECK(boiling.cooling.high == doctest::Approx(120));
    CHECK(boiling.stages.front().condenses == "ethanol");
    CHECK(boiling.circulation_pump == doctest::Approx(20 * 1.8));
}

TEST_CASE("the heat floor is the sum over the materials and their glass") {
    const RouteUse use = use_of(Built(brominated(R"("temperature": "60 degC", "time": "30 min")")));
    const Catalogue& catalogue = Catalogue::embedded();
    const double ethanol = 20.0 * 2.44, acetanilide = 1.0 * 1.3,
                 bromine = 1.2 * 2.0; // J/K; fillers for the solids
    const double millilitres = 20.0 / *catalogue.find_substance("ethanol")->density +
                               1.2 / *catalogue.find_substance("bromine")->density;
    const double glass = millilitres * 1.4 * 0.83;
    CHECK(use.floor == doctest::Approx((ethanol + acetanilide + bromine + glass) * 38.0 / 1000.0));
    CHECK(use.floor < use.socket.low); // the hot surface loses most of it
}

TEST_CASE("the socket gives no less than the heat floor, and a stated energy below it is marked") {
    // A thousandfold of the same mixture in the same half hour; the low end is 203 W x 1800 s / 2.
    const auto large = [](std::string_view stage_more) {
        return use_of(Built(route(
            "4-bromoacetanilide",
            {step("4-bromoacetanilide", "acetanilide",
                  "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide",
                  {stage("reaction",
                         {charge("acetanilide", "1 kg", "substrate"), charge("bromine", "1.2 kg", "reagent"),
                          charge("ethanol", "20 kg", "solvent")},
                         {reaction("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide")},
                         {filtration("filtrate", R"("keeps": ["4-bromoacetanilide"])")}, stage_more)})})));
    };
    const RouteUse warm = large(R"("temperature": "60 degC", "time": "30 min")");
    CHECK(warm.floor > 203 * 1.8 * 1.5); // above the high end of power times time
    CHECK(warm.socket.low == warm.floor);
    CHECK(warm.socket.usual == warm.floor);
    CHECK(warm.socket.high == warm.floor);
    CHECK(warm.stages.front().raised);
    CHECK_FALSE(warm.stages.front().below_floor);

    const RouteUse stated = large(R"("temperature": "60 degC", "time": "30 min", "energy": "90 kJ")");
    CHECK(stated.socket.usual == doctest::Approx(90));
    CHECK(stated.stages.front().below_floor);
    CHECK_FALSE(stated.stages.front().raised);
    CHECK_FALSE(use_of(Built(brominated(R"("temperature": "60 degC", "time": "30 min")"))).stages[0].raised);
}

TEST_CASE("what the route file states overrides the estimate") {
    const RouteUse use = use_of(Built(brominated(
        R"("temperature": "78 degC", "time": "30 min", "energy": "90 kJ", "cooling_water": "4 L")")));
    CHECK(use.socket.usual == doctest::Approx(90));
    CHECK(use.socket.high == doctest::Approx(90));
    CHECK(use.stages.front().socket.stated);
    CHECK(use.cooling.usual == doctest::Approx(4));
    CHECK(use.cooling.low == doctest::Approx(4));
}

TEST_CASE("bromine that is made in the flask is the reason for the hood, before the solvent") {
    const std::string equation =
        "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water";
    const auto in_ethanol = [&](const std::vector<std::string>& charges,
                                const std::vector<std::string>& reactions) {
        return use_of(Built(one_pot("4-bromoacetanilide", "acetanilide", equation, charges, reactions)))
            .stages.front()
            .hood_because;
    };
    const std::vector<std::string> charges{charge("acetanilide", "10 mmol", "substrate"),
                                           charge("ethanol", "20 mL", "solvent"),
                                           charge("hydrobromic acid 48 %", "11 mmol", "reagent"),
                                           charge("hydrogen peroxide 30 %", "11 mmol", "reagent")};
    CHECK(in_ethanol(charges, {reaction("2 hydrogen bromide + hydrogen peroxide -> bromine + 2 water"),
                               reaction("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide")}) ==
          "bromine");
    // Without bromine on the way: what burns the lungs goes before what only catches fire.
    CHECK(in_ethanol(charges, {reaction(equation)}) == "hydrogen bromide");
}

TEST_CASE("bromine sends the stage into the hood, and a stage without a time is counted as silent") {
    const RouteUse use = use_of(Built(brominated(R"("temperature": "25 degC")")));
    CHECK(use.stages.front().hood);
    CHECK(use.stages.front().hood_because == "bromine");
    CHECK(use.silent_stages == 1);
    CHECK(use.minutes == 0.0);
    CHECK(use.suction.usual == doctest::Approx(60));        // one filtration, 10 min at 6 L/min
    CHECK(use.diaphragm_pump == doctest::Approx(40 * 0.6)); // or 600 s at 40 W
}
