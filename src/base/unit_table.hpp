// SPDX-License-Identifier: MIT
// The units that a written quantity may have: every spelling, the one we keep, and what kind of quantity it
// makes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

enum class UnitKind {
    none,
    mass,
    volume,
    amount,
    duration,
    energy,
    power,
    temperature,
    percent,
    mole_percent,
    strength, // "% w/w" and its kin
    equivalents,
    mass_ratio,
    volume_per_mass,
    density,
    molar_mass,
    concentration,
    rate, // of first order
};

struct UnitSpelling {
    std::string_view spelling;
    std::string_view unit; // the spelling that is kept
    UnitKind kind;
    double factor; // to g, mL, mol, s, J, W, 1/s; 1 where there is nothing to convert
};

// nullptr for an unknown spelling.
const UnitSpelling* find_unit(std::string_view spelling);

// The kept spellings, to offer the nearest.
std::string nearest_unit(std::string_view spelling);

// "a mass", "a volume".
std::string_view describe(UnitKind kind);

} // namespace routeweigh
