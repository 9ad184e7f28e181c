// SPDX-License-Identifier: MIT
#include "hazard_case.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

HazardValues figures_of(double everywhere) {
    HazardValues values;
    values.value.assign(schemes().score.cell_count(), everywhere);
    values.low = values.high = values.value;
    return values;
}

} // namespace

TEST_CASE("nothing anywhere scores zero, and nine times x0 one decade") {
    CHECK(score(schemes().score, figures_of(0)).value == 0.0);
    HazardValues values = figures_of(0);
    for (std::size_t e = 0; e < schemes().score.endpoints.size(); ++e)
        for (std::size_t p = 0; p < place_count; ++p)
            values.value[cell_index(e, static_cast<HazardPlace>(p))] = 9 * schemes().score.endpoints[e].x0;
    CHECK(score(schemes().score, values).value == Approx(1));
}

TEST_CASE("the score is the mean of the decades, weight by weight") {
    HazardScheme scheme = schemes().score;
    HazardValues values = figures_of(0);
    std::mt19937 random(1);
    std::uniform_real_distribution<double> exponent(-4, 6);
    for (double& value : values.value)
        value = std::pow(10.0, exponent(random));
    scheme.endpoints[0].weight = 3;
    scheme.endpoints[4].weight = 0;
    double sum = 0, weights = 0;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
        for (const HazardPlace place : {HazardPlace::bottle, HazardPlace::flask, HazardPlace::waste}) {
            const double weight = weight_of(scheme, e, place);
            sum += weight * decades(scheme.endpoints[e], values.value[cell_index(e, place)]);
            weights += weight;
        }
    CHECK(weights == Approx(1));
    CHECK(score(scheme, values).value == Approx(sum).epsilon(1e-12));
}

TEST_CASE("one unbounded cell leaves the score without rank, unless it has no weight") {
    HazardValues values = figures_of(1);
    values.high[cell_index(0, HazardPlace::flask)] = std::numeric_limits<double>::infinity();
    CHECK(!score(schemes().score, values).ranked());
    CHECK(std::isfinite(score(schemes().score, values).value));
    HazardScheme scheme = schemes().score;
    scheme.endpoints[0].weight = 0;
    CHECK(score(scheme, values).ranked());
}

TEST_CASE("more of anything never lowers the score, and a larger x0 never raises it") {
    std::mt19937 random(2);
    std::uniform_real_distribution<double> exponent(-6, 8);
    std::uniform_int_distribution<std::size_t> any(0, schemes().score.cell_count() - 1);
    for (int run = 0; run < 2000; ++run) {
        HazardValues values = figures_of(0);
        for (double& value : values.value)
            value = std::pow(10.0, exponent(random));
        const double before = score(schemes().score, values).value;
        CHECK(score(schemes().score, values, 10).value <= before);
        CHECK(score(schemes().score, values, 0.1).value >= before);
        values.value[any(random)] *= 1.5;
        CHECK(score(schemes().score, values).value >= before);
    }
}
