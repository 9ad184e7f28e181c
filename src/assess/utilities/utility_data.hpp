// SPDX-License-Identifier: MIT
// What a bench draws from the building, as the scheme "utilities" has it: average powers, flows, heats.
#pragma once

#include "base/provenance.hpp"
#include "chemistry/catalogue.hpp"

#include <string>
#include <utility>
#include <vector>

namespace routeweigh::utilities {

// Sourced<T>: a value with its origin.

/// A default with the ends between which it may lie.
struct Flow {
    Sourced<double> usual;
    double low = 0, high = 0;
};

struct LiquidHeat {
    const Substance* substance = nullptr;
    double capacity = 0;     ///< J/(g K), near 25 degC
    double vaporisation = 0; ///< J/g, at the boiling point
    Provenance from;
};

struct UtilityData {
    Sourced<double> room, heated_above, reflux_within; ///< degC, degC, K
    Sourced<double> hot_plate, band;                   ///< W, share of the socket estimate
    Sourced<double> diaphragm_pump, circulation_pump;  ///< W
    Flow cooling, suction;                             ///< L/min
    Sourced<double> suction_minutes;
    Sourced<double> glass_heat, glass_mass;        ///< J/(g K), g per mL of liquid
    Sourced<double> unknown_solid, unknown_liquid; ///< J/(g K)
    std::vector<LiquidHeat> liquids;

    const LiquidHeat* find(const Substance& substance) const; ///< nullptr where not listed
    /// J/(g K); the filler for its phase where not listed.
    double heat_capacity(const Substance& substance) const;
    /// Every default with its value and origin, for the list of assumptions.
    std::vector<std::pair<std::string, std::string>> assumptions() const;
};

/// \throws InputError
UtilityData read_utility_data(const Catalogue& catalogue);

} // namespace routeweigh::utilities
