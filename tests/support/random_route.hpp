// SPDX-License-Identifier: MIT
// Random routes of invented substances whose equations balance by construction.
//
// Linear, convergent, shared intermediates, one step feeding two, loops of steps that give back less than
// they take, reuse, solutions, gases, air, partial conversions, side reactions that eat product, seeds, held
// liquor, shared losses: whatever a bench sheet can say.
#pragma once

#include "chemistry/material.hpp"
#include "chemistry/substance.hpp"
#include "route/route.hpp"

#include <deque>
#include <memory>
#include <random>

namespace routeweigh::test {

/// The route points into its own substances and materials, so it stays where it was made.
struct RandomRoute {
    RandomRoute() = default;
    RandomRoute(const RandomRoute&) = delete;
    RandomRoute& operator=(const RandomRoute&) = delete;

    std::deque<Substance> substances;
    std::deque<Material> materials;
    Route route;
};

struct RandomRouteOptions {
    int most_steps = 5;
    bool reuse = true;
    bool seeds = true; ///< product charged to its own step
    bool air = true;   ///< oxygen taken as used
};

std::unique_ptr<RandomRoute> random_route(std::mt19937& draw, const RandomRouteOptions& options = {});

/// Multiplies what each step charges and isolates by a factor of its own; equivalents and yields stay.
void resize_steps(Route& route, std::mt19937& draw);

/// Lists the reactions of every stage, the charges of every stage and the steps in another order.
void shuffle_listing(Route& route, std::mt19937& draw);

} // namespace routeweigh::test
