// SPDX-License-Identifier: MIT
// Reads routes again with other atomic weights.
#pragma once

#include "chemistry/catalogue.hpp"
#include "compare/uncertainty/atomic_weights.hpp"

namespace routeweigh {

/// \param sources  that the routes of the comparison were read from
/// \param catalogue  that they were read with
std::vector<ElementEffect> atomic_weight_effects(const Comparison& comparison,
                                                 const std::vector<SourcePtr>& sources,
                                                 const Catalogue& catalogue);

} // namespace routeweigh
