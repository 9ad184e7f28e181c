// SPDX-License-Identifier: MIT
// Where the entry of a substance's solutions holds. The entries are those of aqueous solutions: hydrogen
// chloride in hexane or hydrogen bromide in acetic acid is judged by the entry of the gas.
#pragma once

#include "chemistry/substance.hpp"

namespace routeweigh {

/// Per cent in water, of the strongest solution in the trade (70 % hydrogen fluoride; from memory). Where the
/// water there would have to hold more than that, most of the substance is dissolved in something else.
inline constexpr double strongest_in_water = 70;

/// \param grams, water  of both that are there together, in the same unit
inline bool dissolves_in(double water, const Substance& substance, double grams) {
    if (!substance.ghs_solution) return false;
    const double strongest = substance.ghs_solution->max_percent.value_or(strongest_in_water);
    return 100 * grams <= strongest * (grams + water) * (1 + 1e-9);
}

} // namespace routeweigh
