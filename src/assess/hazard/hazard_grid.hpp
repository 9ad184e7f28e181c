// SPDX-License-Identifier: MIT
// The hazard figures of one route as a reader sees them: endpoints by places, each with who contributes and
// on what it rests.
#pragma once

#include "assess/hazard/hazard_map.hpp"

#include <string>
#include <vector>

namespace routeweigh {

// One substance in one cell; amounts are figures per gram of product.
struct HazardContributor {
    const Substance* substance = nullptr;
    bool solution = false; // by the entry of its solution
    double grams = 0;      // per gram of product, nominal reading
    double amount = 0;     // in the value of the cell
    double high = 0;       // at most; may be infinite
    double short_term = 0; // against a ceiling or short-term limit; in no sum
    double share = 0;      // of the value, 0 to 1
    HazardBasis basis = HazardBasis::not_classified;
    std::string level; // "band E", "H400", "category 2", "serious"; "" where there is none
    bool lower_level = false;
    bool m_factor_assumed = false;
    HazardProvenance provenance;
};

struct HazardCell {
    double value = 0;
    double low = 0;
    double high = 0; // infinite: nothing bounds it
    double short_term = 0;
    double decades = 0;     // d of the value
    double lower_level = 0; // g at a lower level, shown and not scored
    double unassessed = 0;  // g that nobody has assessed here
    // Shares of the value, 0 to 1; 0 where the value is 0.
    double share_on_bands = 0;
    double share_from_memory = 0; // of classifications and limits that were recalled, not read
    double share_on_assumed_m = 0;
    std::vector<HazardContributor> contributors; // greatest first; also what adds nothing to the value
};

struct HazardGrid {
    const HazardScheme* scheme = nullptr;
    const Banding* banding = nullptr;
    std::vector<HazardCell> cells; // see cell_index()

    const HazardCell& cell(std::size_t endpoint, HazardPlace place) const {
        return cells[cell_index(endpoint, place)];
    }
};

HazardGrid explain(const HazardMap& map, const Evaluation& evaluation);

} // namespace routeweigh
