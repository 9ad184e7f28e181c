// SPDX-License-Identifier: MIT
#include "route/route.hpp"

namespace routeweigh {

double SubstanceEquation::coefficient_of(const Substance* substance) const {
    for (const Part& part : parts)
        if (part.substance == substance) return part.coefficient;
    return 0.0;
}

} // namespace routeweigh
