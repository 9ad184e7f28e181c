// SPDX-License-Identifier: MIT
// Which reactant of a step runs out first: the one with the smallest amount over coefficient.
//
// Only what stands on the left of the overall equation can limit; catalysts and auxiliaries never do.
#pragma once

#include "route/flat_route.hpp"

#include <vector>

namespace routeweigh {

struct ReactantSupply {
    const Substance* substance;
    double moles;       ///< charged up to the last stage in which product forms
    double coefficient; ///< in the overall equation, above 0
    double runs;        ///< mol of the overall equation for which it is enough: moles / coefficient
};

/// The reactants of one step as it is written, the limiting one first; of equal ones in the order of the
/// equation. What is drawn from the air as used is left out, for it never runs out.
std::vector<ReactantSupply> reactant_supplies(const FlatRoute& flat, int step, const Inputs& inputs);

} // namespace routeweigh
