// SPDX-License-Identifier: MIT
// Which entry of a substance counts where: that of its aqueous solution only beside water.
#include "hazard_case.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

/// Bromination in acetic acid without a drop of water; amounts are invented.
WeighedRoute bromination(const Items& more = {}) {
    Items charges = {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "10 mmol", "oxidant"),
                     charge("acetic acid", "10 g", "solvent")};
    charges.insert(charges.end(), more.begin(), more.end());
    return {{"dry", one_pot("4-bromoacetanilide", "acetanilide", bromination_equation, charges,
                            {reaction(bromination_equation)}, R"("dissolved": ["hydrogen bromide"])")},
            Catalogue::embedded()};
}

/// By the entry of its solution? Empty where it adds nothing.
std::optional<bool> in_solution(const WeighedRoute& route, HazardPlace place, const std::string& substance) {
    const HazardGrid grid = route.grid();
    for (std::size_t e = 0; e < grid.scheme->endpoints.size(); ++e)
        if (grid.scheme->endpoints[e].id == "contact")
            for (const HazardContributor& part : grid.cell(e, place).contributors)
                if (part.substance->id == substance) return part.solution;
    return {};
}

} // namespace

// Regulation (EC) No 1272/2008, Annex VI (remembered): 035-002-00-0 is hydrogen bromide, 035-002-01-8
// "hydrobromic acid ... %", the solution in water.
TEST_CASE("hydrogen bromide set free without water is the gas, beside water it is hydrobromic acid") {
    const WeighedRoute dry = bromination();
    const WeighedRoute wet = bromination({charge("water", "10 g", "drown-out")});
    for (const HazardPlace place : {HazardPlace::flask, HazardPlace::waste}) {
        CHECK(in_solution(dry, place, "hydrogen-bromide") == false);
        CHECK(in_solution(wet, place, "hydrogen-bromide") == true);
    }
}

TEST_CASE("a bottle of hydrobromic acid holds the solution, whatever else is in the pot") {
    const WeighedRoute route = bromination({charge("hydrobromic acid 48 %", "1 g", "catalyst")});
    CHECK(in_solution(route, HazardPlace::bottle, "hydrogen-bromide") == true);
    CHECK(in_solution(route, HazardPlace::bottle, "acetic-acid") == false);
}
