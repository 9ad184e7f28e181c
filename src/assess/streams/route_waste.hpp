// SPDX-License-Identifier: MIT
// All that is said of the waste of one route: streams described and sorted, handout checked, quench sized,
// fit.
#pragma once

#include "assess/streams/container_log.hpp"
#include "assess/streams/fit.hpp"
#include "assess/streams/handout.hpp"
#include "assess/streams/stream_rules.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

struct StreamAdvice {
    RouteStream stream;
    StreamDescription nominal, unreacted;
    Decision decision; ///< of both readings, the more demanding
    Decision nominal_decision, unreacted_decision;
    HandoutFinding handout;
    CompatibilityReport inside; ///< what its own parts do

    double largest_volume() const; ///< mL a pot, larger of both readings
};

struct RouteWaste {
    std::vector<StreamAdvice> streams;
    std::vector<QuenchPlan> quenches; ///< one a step

    /// Streams whose handout names another container than the computed one.
    std::vector<const StreamAdvice*> mismatches() const;
};

/// \param route  passed its checks
RouteWaste assess_waste(const Route& route, const StreamRules& rules);

/// Containers that a class fills, in the order of the local rules.
std::vector<ContainerFit> fit_class(const RouteWaste& waste, const ClassSize& size, const LocalRules& local);

/// A stream that needs a bottle of its own, for a class.
struct OwnBottle {
    const StreamAdvice* stream;
    double volume = 0; ///< mL, allowance included
};
std::vector<OwnBottle> own_bottles(const RouteWaste& waste, const ClassSize& size, const LocalRules& local);

/// A stream of the route against a container's log, in the reading that finds more.
CompatibilityReport check_stream(const StreamAdvice& advice, const ContainerLog& log,
                                 const StreamRules& rules);

} // namespace routeweigh::streams
