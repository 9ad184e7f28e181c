// SPDX-License-Identifier: MIT
// What a route is charged with, by purpose, and which purpose makes it differ from another route.
#pragma once

#include "assess/assessment.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

enum class Purpose { reactants, reaction_solvent, drown_out, quench, washing, purification, aids };
inline constexpr std::size_t purpose_count = 7;

std::string_view words(Purpose purpose);

/// Everything bought for one purpose, per gram of product and net of reuse.
struct PurposeInput {
    double grams = 0;
    struct Item {
        std::string material;
        double grams;
    };
    std::vector<Item> items; ///< largest first
};

using PurposeInputs = std::array<PurposeInput, purpose_count>;

PurposeInputs inputs_by_purpose(const Assessment& route);

/// How much more of one purpose a route takes than the other, g/g.
struct PurposeDifference {
    Purpose purpose;
    double grams;
    std::string materials; ///< of the route that takes more
};

/// What accounts for the difference in mass, largest first: only purposes that push the way of the whole
/// difference. \param with_drown_out  false: under the same auxiliaries
std::vector<PurposeDifference> causes(const Assessment& route, const Assessment& baseline,
                                      bool with_drown_out);

/// The first causes in words, at most \p most: "quench +1.9 g/g (sodium metabisulfite 10 %)".
std::string causes_text(const Assessment& route, const Assessment& baseline, bool with_drown_out,
                        std::size_t most);

} // namespace routeweigh::documents
