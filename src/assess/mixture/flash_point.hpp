// SPDX-License-Identifier: MIT
// The flash point of a liquid mixture: measured, or screened from its composition.
//
// Liaw's method (Liaw et al., 2002; memory): the temperature T at which
//
//   sum over the flammable of x_i g_i P_i(T) / P_i(T_i) = 1
//
// x mole fraction of the liquid, g activity coefficient, P vapour pressure, T_i flash point of the neat
// ingredient. The vapour of each alone is at its lower limit of flammability at T_i, so that the limits
// cancel. g is van Laar's with water (ideal mixing errs by more than 10 K on the unsafe side) and 1 among
// solvents. Without constants the lowest flash point of a flammable ingredient stands for the mixture: a
// bound, no estimate. Solids and acids that are dissolved are left out, which raises the flammable share.
#pragma once

#include "assess/mixture/flash_point_data.hpp"
#include "assess/mixture/resolved_mixture.hpp"

#include <optional>
#include <vector>

namespace routeweigh {

struct FlammablePart {
    const ResolvedIngredient* ingredient = nullptr;
    double flash_point = 0; // degC, of the neat substance
};

enum class FlashPointMethod {
    measured,     // a fact of the mixture
    neat,         // one substance, its own
    activity,     // Liaw with van Laar constants
    lowest,       // bound
    halogenated,  // not predictable beside halogenated solvents; with a bound where most of it is flammable
    not_flammable // nothing flammable at 1 % or more
};

struct FlashPoint {
    FlashPointMethod method = FlashPointMethod::not_flammable;
    std::optional<double> celsius;
    std::vector<FlammablePart> flammable; // 1 % or more each, lowest flash point first
};

// `highest`: substances that flash above are no flammable ingredients.
FlashPoint flash_point_of(const ResolvedMixture& mixture, const FlashPointData& data, double highest);

// A solvent in the liquid, for Liaw's method.
struct VolatilePart {
    double moles = 0;
    double flash_point = 0; // degC
    AntoineConstants antoine;
    WaterPair with_water; // not used without water
};

// The flash point in degC by Liaw's method; none at or below 200 degC. Ideal where `ideal`.
std::optional<double> liaw_flash_point(const std::vector<VolatilePart>& parts, double moles_of_water,
                                       bool ideal = false);

} // namespace routeweigh
