// SPDX-License-Identifier: MIT
// What compiling and evaluating the totals both need.
#pragma once

#include "chemistry/element.hpp"
#include "chemistry/substance.hpp"

#include <limits>

namespace routeweigh {

/// A total that cannot be known.
inline constexpr double unknown_total = std::numeric_limits<double>::quiet_NaN();

inline constexpr double bromine_molar_mass = 159.808; // g/mol Br2, IUPAC 2021 abridged: 2 x 79.904

/// g of one element in a gram of the substance.
inline double element_fraction(const Substance& substance, int element) {
    return substance.has_formula()
               ? atoms_of(substance.formula, element) * element_weight(element) / substance.molar_mass
               : 0.0;
}

} // namespace routeweigh
