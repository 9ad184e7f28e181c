// SPDX-License-Identifier: MIT
// What is known of liquids beside water: how their vapour pressure grows and how they mix.
#pragma once

#include "base/provenance.hpp"
#include "input/source.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace routeweigh::streams {

struct MixedLiquid {
    std::string id;
    double vaporisation = 0;                           ///< kJ/mol
    std::optional<std::pair<double, double>> van_laar; ///< in much water, and water in much of it
    std::optional<double> soluble;                     ///< g per 100 g of water, for what mixes only partly
    bool alcohol = false;
    Provenance from;
};

struct MixedLiquids {
    struct PublishedPoint {
        double percent_by_volume, celsius;
    };
    double least_water = 0;         ///< share by mass below which the screening does not apply
    double most_without_vapour = 0; ///< share by mass of what has no vapour
    double lowest = 0, highest = 0; ///< degC
    Provenance range_from;
    Sourced<double> negligible; ///< share by mass of a flammable liquid of unknown mixing
    std::vector<MixedLiquid> liquids;
    std::string published_substance;
    std::vector<PublishedPoint> published;
    Provenance published_from;

    const MixedLiquid* find(std::string_view id) const;
};

/// \throws InputError with every problem of the file
MixedLiquids read_mixed_liquids(const Source& source);

} // namespace routeweigh::streams
