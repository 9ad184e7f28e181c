// SPDX-License-Identifier: MIT
// Water that a salt holds in its crystals, and the molar mass without it.
#pragma once

#include "chemistry/substance.hpp"

namespace routeweigh {

/// g/mol, from the abridged atomic weights of IUPAC 2021: 2 x 1.008 + 15.999.
inline constexpr double molar_mass_of_water = 18.015;

/// Mol of water in one mol, as its formula is written: 5 for "CuSO4.5H2O", 0 where it has no such part.
int crystal_water(const Substance& substance);

/// g/mol; that of the substance where it holds no crystal water.
double anhydrous_molar_mass(const Substance& substance);

} // namespace routeweigh
