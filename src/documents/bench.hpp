// SPDX-License-Identifier: MIT
// What stands on the bench for a route: every bought bottle with the hazards that its label names.
#pragma once

#include "assess/assessment.hpp"
#include "assess/classified_route.hpp"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

/// Kinds of hazard, one for every statement.
enum class BenchHazard {
    oxidising,
    flammable,
    corrosive,
    toxic, ///< categories 1 to 3 of acute toxicity
    sensitising,
    long_term,
    aspiration, ///< swallowed or brought up again, it gets into the lungs
    aquatic,
    ozone,
    explosive,
    pressure,
    harmful,
    other ///< a supplemental statement, or a number that this program does not know
};

/// The one rule by which every paper sorts hazard statements. \param statement  its number in the GHS: 225
BenchHazard kind_of(int statement);

std::string_view words(BenchHazard hazard); ///< "oxidising"

struct BenchBottle {
    const Material* material;
    double grams;                            ///< per gram of product, gross
    std::vector<const Substance*> reactants; ///< in it, water apart
    std::set<BenchHazard> hazards;
    std::vector<std::string> statements; ///< of its label, supplemental ones last
    std::vector<std::string> undecided;  ///< classes on which only a test decides
    bool assessed;                       ///< what nobody has assessed is less than counts in a mixture
};

/// All bought bottles but water, heaviest first.
/// \param bottles  of this route, classified by the rules that hold where it is run
std::vector<BenchBottle> bench_of(const Assessment& route, const std::vector<ClassifiedBottle>& bottles);

/// The same, the bottles classified here.
std::vector<BenchBottle> bench_of(const Assessment& route, const ClassificationRules& rules);

const BenchBottle* find_on_bench(const std::vector<BenchBottle>& bench, const Material* material);

} // namespace routeweigh::documents
