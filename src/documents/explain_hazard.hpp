// SPDX-License-Identifier: MIT
// How a hazard figure comes about: who contributes, by which limit, from which source.
#pragma once

#include "assess/assessment.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

struct HazardExplanation {
    std::string formula, numbers;
    std::vector<writing::Block> parts;
    writing::MachineTree terms;
};

/// \param figure  the id of an endpoint at a place, or "hazard_score"
HazardExplanation explain_hazard(const Assessment& route, std::string_view figure);

/// Who contributes to one cell; at most \p most rows, the rest summed up in the last.
writing::Table contributor_table(const HazardGrid& grid, std::size_t endpoint, HazardPlace place,
                                 std::size_t most);

/// "in the bottles".
std::string_view words(HazardPlace place);

/// The figure of a cell as text: ">= 12" where nothing bounds it.
std::string cell_text(const HazardCell& cell);

} // namespace routeweigh::documents
