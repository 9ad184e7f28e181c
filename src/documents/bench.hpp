// SPDX-License-Identifier: MIT
// What stands on the bench for a route: every bought substance with the hazards that its statements name.
#pragma once

#include "assess/assessment.hpp"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

/// Kinds of hazard that move a bottle into another cupboard or onto another form; read from H numbers.
enum class BenchHazard { oxidiser, flammable, corrosive, toxic, sensitiser, long_term, aquatic, explosive };

std::string_view words(BenchHazard hazard); ///< "oxidiser"

struct BenchSubstance {
    const Substance* substance;
    double grams;  ///< per gram of product, gross
    bool reactant; ///< used up by the overall equation of a step
    bool assessed;
    std::set<BenchHazard> hazards;
    std::vector<std::string> statements; ///< those behind `hazards`, without repetition
    std::vector<std::string> others;     ///< further statements, of no such kind
};

/// All bought substances but water, heaviest first.
std::vector<BenchSubstance> bench_of(const Assessment& route);

const BenchSubstance* find_on_bench(const std::vector<BenchSubstance>& bench, const Substance* substance);

} // namespace routeweigh::documents
