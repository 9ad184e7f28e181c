// SPDX-License-Identifier: MIT
// What a run leaves to be destroyed and neutralised, before any quench.
#pragma once

#include "assess/streams/quench_plan.hpp"

namespace routeweigh::streams {

/// What of a stream the stop list says to destroy: one answer for its container and for the quench.
void add_listed(std::vector<StopHit>& list, const StreamDescription& stream);

/// Of one stream, in one reading of the yield.
QuenchNeed need_of(const RouteStream& stream, bool unreacted, const StreamRules& rules);

/// The need of one stream to that of its pot.
void add_need(QuenchNeed& pot, const QuenchNeed& stream);

/// mol left of what no electrons destroy: borohydride, ethoxide, anhydrides.
double moles_without_electrons(const QuenchNeed& need);

} // namespace routeweigh::streams
