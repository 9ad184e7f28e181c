// SPDX-License-Identifier: MIT
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

TEST_CASE("x") {
    const Built built(one_pot(
        "4-bromoacetanilide", "acetanilide", "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide",
        {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "10.6 mmol", "reagent")},
        {reaction("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide")},
        R"("isolated": {"yield": "80 %"})"));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}
