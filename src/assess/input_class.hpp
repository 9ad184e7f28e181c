// SPDX-License-Identifier: MIT
// Which of four classes a charged substance belongs to; the classes never overlap and leave nothing out.
#pragma once

#include "route/flat_route.hpp"

namespace routeweigh {

enum class InputClass {
    reactant, ///< on the left of the step's overall equation and charged as reactant, water included
    water,
    solvent, ///< charged as one, or the liquid of a solution
    aid      ///< the rest: reagents outside the overall equation, catalysts, quench, drying agents
};

inline bool is_water(const Substance& substance) {
    return substance.id == "water";
}

inline InputClass input_class(const Inflow& inflow) {
    if (inflow.reactant) return InputClass::reactant;
    if (is_water(*inflow.substance)) return InputClass::water;
    // The salt of a brine wash is no solvent although the brine is charged as one.
    const bool dissolved_solid = !inflow.neat && inflow.substance->phase == Substance::Phase::solid;
    if (inflow.carrier || (inflow.role->solvent && !dissolved_solid)) return InputClass::solvent;
    return InputClass::aid;
}

} // namespace routeweigh
