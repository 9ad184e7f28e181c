// SPDX-License-Identifier: MIT
// Two routes compared cell by cell, so that no choice of weights, of severity factors or of a point within a
// band decides.
//
// Three questions, each with its own answer: do the values order the pair; does the order hold for every
// limit within the bands (the same limit for the same substance in both routes); does it hold under every
// weighting that gives a worse level more weight.
#pragma once

#include "assess/hazard/hazard_map.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

// The first route against the second.
enum class HazardOrder {
    less,
    no_more, // less or equal, whatever the unknown is
    equal,
    no_less,
    more,
    depends
};

std::string_view words(HazardOrder order);

// Grams at a level or worse, per gram of product, level by level from the worst on.
struct SeverityCurves {
    std::vector<std::string> levels; // worst first
    std::vector<double> first, second;
    // less: the first lies on or below the second at every level and below at one, so that it wins under
    // every monotone weighting; depends: the curves cross.
    HazardOrder order = HazardOrder::equal;
    std::string crossing; // where the curves cross: the first level at which the other route is ahead
    // The order also holds when unassessed mass counts as the worst level against it, and in both readings of
    // the waste.
    bool firm = false;
};

struct HazardPairCell {
    std::size_t endpoint = 0;
    HazardPlace place = HazardPlace::bottle;
    double first = 0, second = 0; // values
    HazardOrder by_value = HazardOrder::equal;
    // First minus second, over the corners of the bands, of what is unassessed, and of the readings of the
    // waste.
    double least = 0, greatest = 0;
    HazardOrder by_interval = HazardOrder::equal;
    SeverityCurves severity;
};

struct HazardComparison {
    std::vector<HazardPairCell> cells; // of the scored places, endpoint by endpoint
    // Over all cells: less where none is more and one is less. Holds under any weights.
    HazardOrder by_value = HazardOrder::equal;
    HazardOrder by_interval = HazardOrder::equal;
};

struct HazardSide {
    const HazardMap& map;
    const HazardValues& values;
};

// Precondition: both maps were compiled with the same scheme, the same banding and the same catalogue.
HazardComparison compare_hazards(const HazardSide& first, const HazardSide& second);

// The orders of several cells taken together: less where none is more and one is less.
HazardOrder combine(const std::vector<HazardOrder>& orders);

} // namespace routeweigh
