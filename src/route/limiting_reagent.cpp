// SPDX-License-Identifier: MIT
#include "route/limiting_reagent.hpp"

#include <algorithm>
#include <cstddef>

namespace routeweigh {

std::vector<ReactantSupply> reactant_supplies(const FlatRoute& flat, int step, const Inputs& inputs) {
    const FlatStep& compiled = flat.steps()[static_cast<std::size_t>(step)];
    int last = 0; // what is charged after the product has formed is no supply of it: water to wash with
    for (std::size_t g = 0; g < compiled.stages.size(); ++g)
        if (compiled.stages[g].extents.makes_product()) last = static_cast<int>(g);

    std::vector<ReactantSupply> supplies;
    for (const auto& part : flat.route().steps[static_cast<std::size_t>(step)].overall.parts) {
        if (part.coefficient >= 0.0) continue;
        double moles = 0.0;
        bool from_air = false;
        for (const Inflow& inflow : flat.inflows_of(step)) {
            if (inflow.stage > last || inflow.substance != part.substance) continue;
            from_air = from_air || inflow.as_used;
            moles += inputs.charged[static_cast<std::size_t>(inflow.slot)] * inflow.fraction /
                     part.substance->molar_mass;
        }
        if (!from_air)
            supplies.push_back({part.substance, moles, -part.coefficient, moles / -part.coefficient});
    }
    std::stable_sort(supplies.begin(), supplies.end(),
                     [](const auto& a, const auto& b) { return a.runs < b.runs; });
    return supplies;
}

} // namespace routeweigh
