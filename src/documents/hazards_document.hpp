// SPDX-License-Identifier: MIT
// Every bottle and every stream of routes, classified, with label elements and reasons.
#pragma once

#include "assess/classified_route.hpp"
#include "route/route.hpp"
#include "writing/blocks.hpp"

#include <memory>
#include <vector>

namespace routeweigh {

/// \param routes  passed their checks
writing::Document hazards_document(const std::vector<Route>& routes, const ClassificationRules& rules);

/// One mixture that somebody stated.
/// \param paired  acids and bases that were paired off before; nullptr where nobody asked for it
writing::Document mixture_document(const MixtureClassification& classification,
                                   const ClassificationRules& rules,
                                   const streams::PairedComposition* paired);

} // namespace routeweigh
