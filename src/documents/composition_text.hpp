// SPDX-License-Identifier: MIT
// What a bottle holds, in per cent by mass that add up to exactly 100 as they are printed.
#pragma once

#include "chemistry/substance.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace routeweigh::documents {

struct PrintedShare {
    const Substance* substance = nullptr;
    double grams = 0;
    std::int64_t tenths = 0; ///< of a per cent; 0: a trace
};

/// Largest first, water last. \pre grams are not negative, and one is above zero
std::vector<PrintedShare> printed_shares(const std::vector<std::pair<const Substance*, double>>& grams);

/// Beside water nothing is anhydrous: "sodium thiosulfate" of "sodium thiosulfate (anhydrous)".
std::string name_in_water(const Substance& substance);

/// "ethanol 92.4 %, water 7.6 %"; what is below 0.05 % is named behind it: "; traces of bromine".
/// One substance alone is "ethanol 100 %".
std::string composition_text(const std::vector<PrintedShare>& shares);

} // namespace routeweigh::documents
