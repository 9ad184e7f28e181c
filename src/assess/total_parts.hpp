// SPDX-License-Identifier: MIT
// What compiling and evaluating the totals both need.
#pragma once

#include "route/route.hpp"

#include <limits>

namespace routeweigh {

/// A total that cannot be known.
inline constexpr double unknown_total = std::numeric_limits<double>::quiet_NaN();

/// g/mol Br2
inline double bromine_molar_mass(const Route& route) {
    return 2.0 * route.weights.of(35);
}

/// g of carbon in a gram of a substance of the route.
inline double carbon_fraction(const Route& route, const Substance& substance) {
    return substance.has_formula()
               ? atoms_of(substance.formula, 6) * route.weights.of(6) / substance.molar_mass
               : 0.0;
}

} // namespace routeweigh
