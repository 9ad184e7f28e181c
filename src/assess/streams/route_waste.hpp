// SPDX-License-Identifier: MIT
// All that is said of the waste of one route: streams described and sorted, handout checked, quench sized,
// fit.
#pragma once

#include "assess/streams/container_log.hpp"
#include "assess/streams/fit.hpp"
#include "assess/streams/handout.hpp"
#include "assess/streams/quench_plan.hpp"
#include "assess/streams/stream_rules.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh::streams {

struct StreamAdvice {
    RouteStream stream;
    StreamDescription nominal, unreacted;
    Decision decision; ///< of both readings, the more demanding
    Decision nominal_decision, unreacted_decision;
    HandoutFinding handout;
    CompatibilityReport inside;                     ///< what its own parts do, those of both readings
    std::optional<CompatibilityReport> with_others; ///< with the route's other streams that go there
    std::optional<CompatibilityReport> with_log;    ///< with what the container holds by its log
    std::string log;                                ///< the container of that log; "" for none

    double largest_volume() const; ///< mL a pot, larger of both readings
};

struct RouteWaste {
    std::vector<StreamAdvice> streams;
    std::vector<QuenchPlan> quenches; ///< one a step

    /// Streams whose handout names another container than the computed one.
    std::vector<const StreamAdvice*> mismatches() const;
};

/// \param route  passed its checks  \param logs  at most one a container
RouteWaste assess_waste(const Route& route, const StreamRules& rules,
                        const std::vector<ContainerLog>& logs = {});

/// Containers that so many pots fill, in the order of the local rules; what a log holds is there already.
std::vector<ContainerFit> fit_class(const RouteWaste& waste, double pots, const LocalRules& local,
                                    const std::vector<ContainerLog>& logs = {});

/// A stream that needs a bottle of its own, for a class.
struct OwnBottle {
    std::string stream; ///< its name
    double per_pot = 0; ///< mL
    double volume = 0;  ///< mL of the class, allowance included
};
std::vector<OwnBottle> own_bottles(const RouteWaste& waste, double pots, const LocalRules& local);

/// A route worked in so many pots at one time.
struct ClassWaste {
    const Route* route;
    double pots;
    RouteWaste waste;
    std::vector<ContainerFit> fits;
    std::vector<OwnBottle> own_bottles;
};
ClassWaste assess_class(const Route& route, double pots, const StreamRules& rules,
                        const std::vector<ContainerLog>& logs = {});

} // namespace routeweigh::streams
