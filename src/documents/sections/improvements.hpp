// SPDX-License-Identifier: MIT
// What would improve each route: the changes that do most for its mass, each really applied and evaluated.
// Made only when somebody worked them out, which takes time.
#pragma once

#include "compare/improvement.hpp"
#include "documents/sections/section.hpp"

#include <vector>

namespace routeweigh::documents {

/// \param improvements  one a route, in their order
void add_improvements(const ReportView& view, const std::vector<Improvements>& improvements, Blocks& blocks);

} // namespace routeweigh::documents
