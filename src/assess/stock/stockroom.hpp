// SPDX-License-Identifier: MIT
// What a stockroom buys as it is, what it makes, and how long that keeps.
#pragma once

#include "base/provenance.hpp"
#include "chemistry/catalogue.hpp"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace routeweigh::stock {

/// How long solutions of a substance in water keep.
struct ShelfLife {
    const Substance* substance = nullptr;
    int days = 0; ///< from making to last use; 0: on the day itself
    std::string why;
    Provenance from;
};

struct Stockroom {
    std::vector<const Material*> bought;
    std::set<const Material*> from_tap;
    std::vector<ShelfLife> keeps;

    bool is_bought(const Material& material) const;
    const ShelfLife* shelf_life(const Substance& solute) const; ///< nullptr where not listed
};

/// Of the scheme "stockroom". \throws InputError
Stockroom read_stockroom(const Catalogue& catalogue);

/// How a solution is made: so much of the stock and so much water for one gram of it.
struct Recipe {
    const Material* solution = nullptr;
    const Substance* solute = nullptr;
    const Material* stock = nullptr; ///< the solid, the neat liquid, or a stronger solution
    const Material* water = nullptr;
    double stock_share = 0; ///< g/g; the rest is water
};

/// Empty for what is bought, is no solution of one substance in water, or has no stock that is stronger.
/// \param at_hand  materials that are there anyhow; of several stocks these come first
std::optional<Recipe> recipe_of(const Material& material, const Stockroom& stockroom,
                                const Catalogue& catalogue, const std::set<const Material*>& at_hand);

} // namespace routeweigh::stock
