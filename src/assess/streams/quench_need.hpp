// SPDX-License-Identifier: MIT
// What a run leaves to be destroyed and neutralised, before any quench.
#pragma once

#include "assess/streams/quench_plan.hpp"

#include <vector>

namespace routeweigh::streams {

/// \param streams  everything that leaves one pot, in one reading of the yield
QuenchNeed need_of(const std::vector<Composition>& streams, const QuenchRules& rules);

} // namespace routeweigh::streams
