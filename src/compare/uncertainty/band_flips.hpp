// SPDX-License-Identifier: MIT
// What happens to the order by hazard score when a row of the banding that may have been remembered wrongly
// says the other thing.
#pragma once

#include "compare/comparison.hpp"

#include <utility>

namespace routeweigh {

struct BandFlip {
    const BandRow* row = nullptr;                            ///< of the first banding
    int band = 0;                                            ///< the other band, index in Banding::bands
    std::vector<double> scores;                              ///< by route, with the row flipped
    std::vector<std::pair<std::size_t, std::size_t>> turned; ///< pairs of routes that change places
};

/// One entry a row that is marked uncertain, whether or not it turns anything.
std::vector<BandFlip> band_flips(const Comparison& comparison);

} // namespace routeweigh
