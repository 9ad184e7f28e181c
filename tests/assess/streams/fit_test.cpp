// SPDX-License-Identifier: MIT
// Container arithmetic: usable volume is size times fill limit, containers are the class's volume over it,
// rounded up.
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

ContainerFit fit(double per_pot, double pots, double present = 0, double allowance = 0, double limit = 0.9) {
    static const Container bottle{ContainerKind::flammable, "bottle", "", 4000, ""};
    LocalRules local = us_rules().local;
    local.allowance.value = allowance;
    local.fill_limit.value = limit;
    return fit_container(bottle, {{"filtrate", per_pot, 0}}, pots, local, {present, 0});
}

} // namespace

TEST_CASE("one bottle, several, and how full the last one ends") {
    CHECK(fit(50, 24).containers == 1);
    CHECK(fit(50, 24).last_full == doctest::Approx(0.3));
    CHECK(fit(150, 24).containers == 1); // 3600 mL, just the limit
    CHECK(fit(150, 24).last_full == doctest::Approx(0.9));
    CHECK(fit(150.1, 24).containers == 2);
    CHECK(fit(150.1, 24).last_full == doctest::Approx((150.1 * 24 - 3600) / 4000));
    CHECK(fit(400, 24).containers == 3);
    CHECK(fit(50, 24, 0, 0.1).volume == doctest::Approx(1320));
    CHECK(fit(150, 24, 0, 0, 0.75).containers == 2);
    CHECK(fit(0, 24).containers == 0);
}

TEST_CASE("a bottle that has begun is filled first") {
    const ContainerFit room = fit(50, 24, 2000);
    CHECK(room.fits);
    CHECK(room.room == doctest::Approx(1600));
    CHECK(room.containers == 0);
    CHECK(room.last_full == doctest::Approx(0.8));
    CHECK(room.call); // 75 % is the default at which to call
    const ContainerFit more = fit(50, 24, 3000);
    CHECK_FALSE(more.fits);
    CHECK(more.containers == 1);
    CHECK(more.last_full == doctest::Approx(600.0 / 4000));
    CHECK(fit(50, 24, 5000).room == 0);
}

TEST_CASE("the bottle that has begun may be of another size than the next one") {
    static const Container bottle{ContainerKind::flammable, "bottle", "", 4000, ""};
    LocalRules local = us_rules().local;
    local.allowance.value = 0;
    const auto into = [&](double volume) {
        return fit_container(bottle, {{"filtrate", volume, 0}}, 1, local, {500, 1000});
    };
    CHECK(into(400).fits); // 90 % of 1 L less the 500 mL that are there
    CHECK(into(400).last_full == doctest::Approx(0.9));
    CHECK(into(401).containers == 1);
    CHECK(into(401).last_full == doctest::Approx(1.0 / 4000));
}

TEST_CASE("the fill limit comes from the local rules") {
    CHECK(us_rules().local.fill_limit.value == doctest::Approx(0.9));
    CHECK(us_rules().local.fill_limit.from.standing == Standing::read);
}

TEST_CASE("a class of 24 making A3 in the US and in the EU") {
    const std::string path = "routes/4-bromoacetanilide/A3.json";
    const WasteOf us(path, us_rules());
    const std::vector<ContainerFit> containers = fit_class(us.waste, 24, us_rules().local);
    REQUIRE(containers.size() == 2);
    CHECK(containers[0].container->kind == ContainerKind::halogenated);
    CHECK(containers[1].container->kind == ContainerKind::aqueous_neutral);
    const double filtrate = us.stream("filtrate and washes").largest_volume();
    CHECK(containers[1].volume == doctest::Approx(24 * 1.1 * filtrate));
    CHECK(containers[1].containers == 1);
    CHECK_FALSE(containers[1].vent.empty());
    const WasteOf eu(path, eu_rules());
    const std::vector<ContainerFit> in_eu = fit_class(eu.waste, 24, eu_rules().local);
    CHECK(in_eu[1].container->kind == ContainerKind::flammable);
}

// Common practice, no source: acid in the next step would free hydrogen cyanide.
TEST_CASE("cyanide on crystals is washed off and tested for before the product is used") {
    const WasteOf cyanide("routes/5-5-diphenylhydantoin/D1a-D2c-D3a.json", us_rules());
    const auto& streams = cyanide.waste.streams;
    const auto crystals = std::find_if(streams.begin(), streams.end(), [](const StreamAdvice& advice) {
        return advice.stream.stays_on_product() && advice.decision.outcome == Decision::Outcome::own_bottle;
    });
    REQUIRE(crystals != streams.end());
    CHECK(crystals->decision.goes_to.starts_with("wash it off the product until a test finds none"));
    CHECK(std::count_if(crystals->decision.reasons.begin(), crystals->decision.reasons.end(),
                        [](const auto& reason) { return reason.what == "stop list"; }) == 1);
}

TEST_CASE("streams that need their own bottle are counted apart") {
    const WasteOf cyanide("routes/5-5-diphenylhydantoin/D1a-D2c-D3a.json", us_rules());
    const std::vector<OwnBottle> bottles = own_bottles(cyanide.waste, 10, us_rules().local);
    REQUIRE(bottles.size() == 3);
    CHECK(bottles[0].per_pot > 0);
    CHECK(bottles[0].volume == doctest::Approx(11 * bottles[0].per_pot));
}
