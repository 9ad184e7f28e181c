// SPDX-License-Identifier: MIT
// Specific concentration limits of an ingredient, wherever in its entry they stand.
#pragma once

#include "assess/mixture/limits.hpp"
#include "assess/mixture/resolved_mixture.hpp"

#include <string_view>

namespace routeweigh {

// Calls f(band) for each specific limit of the class.
template<typename F>
void each_band(const ResolvedIngredient& ingredient, std::string_view hazard_class, F&& f) {
    for (const GhsEntry& entry : ingredient.ghs())
        for (const ConcentrationBand& band : entry.specific_limits)
            if (band.hazard_class == hazard_class) f(band);
}

// The band of the class that begins lowest, or nullptr.
inline const ConcentrationBand* lowest_band(const ResolvedIngredient& ingredient,
                                            std::string_view hazard_class) {
    const ConcentrationBand* lowest = nullptr;
    each_band(ingredient, hazard_class, [&](const ConcentrationBand& band) {
        if (lowest == nullptr || band.min_percent < lowest->min_percent) lowest = &band;
    });
    return lowest;
}

inline bool begins(const ConcentrationBand& band, double percent) {
    return band.min_exclusive ? is_above(percent, band.min_percent) : reaches(percent, band.min_percent);
}

// A band ends where the next begins: the lower edge belongs to it, the upper one does not.
inline bool holds(const ConcentrationBand& band, double percent) {
    return begins(band, percent) && !(band.max_percent && reaches(percent, *band.max_percent));
}

} // namespace routeweigh
