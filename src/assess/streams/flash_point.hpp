// SPDX-License-Identifier: MIT
// Screens the flash point of water that holds organic liquids.
//
// The mixture flashes where the sum over its flammable parts of x gamma P(T) / P(own flash point) reaches 1.
// It is a screening for sorting waste: dissolved salts and pairs of organic liquids are left out, and outside
// its range it gives no number.
#pragma once

#include "assess/streams/composition.hpp"
#include "assess/streams/mixed_liquids.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

struct FlashPoint {
    enum class Verdict {
        estimated,
        above_range,    ///< above the highest temperature at which the method is used
        none_flammable, ///< no part has a flash point that counts
        not_applicable  ///< see reason
    };
    struct Part {
        const Substance* substance;
        double mole_fraction; ///< in the liquid
        double activity;      ///< x gamma, at most 1
        double own;           ///< degC, flash point of the pure liquid
        double at_flash;      ///< its share of the sum at the estimate, 0 to 1
    };
    Verdict verdict = Verdict::none_flammable;
    double celsius = 0; ///< only where estimated
    std::string reason; ///< in words, for every verdict
    std::vector<Part> parts;
    std::vector<std::string> assumptions;

    /// The estimate lies below the line. False also where nothing was estimated.
    bool below(double line) const { return verdict == Verdict::estimated && celsius < line; }
};

/// \param without_alcohols  leaves alcohols out, to see whether the rest alone would flash
FlashPoint screen_flash_point(const Composition& composition, const MixedLiquids& liquids,
                              bool without_alcohols = false);

/// Method and range of validity in two sentences.
std::string flash_point_method(const MixedLiquids& liquids);

} // namespace routeweigh::streams
