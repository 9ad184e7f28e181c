// SPDX-License-Identifier: MIT
// Time, heat, power and water of a route, stage by stage: an estimate with its band, or what the file states.
//
// Per run of the step as it is written. Heat floor and socket are two numbers, never one: the hot surface of
// a small pot loses ten to fifty times what its content takes up.
#pragma once

#include "assess/utilities/utility_data.hpp"
#include "route/flat_route.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh::utilities {

/// A number that may lie between two others; equal where it was stated.
struct Estimate {
    double usual = 0, low = 0, high = 0;
    bool stated = false; ///< by the route file

    Estimate& operator+=(const Estimate& other);
    Estimate times(double factor) const;
};

struct StageUse {
    int step = 0, stage = 0;
    std::optional<double> minutes; ///< as stated
    bool hood = false;             ///< something in the pot is bad to breathe or burns the lungs
    std::string hood_because;      ///< the substance that asks for it
    bool heated = false;
    std::string condenses;       ///< the liquid whose vapour a condenser catches; needs_condenser()
    bool reflux = false;         ///< and leads back
    double floor = 0;            ///< kJ
    Estimate socket;             ///< kJ; estimated, never below the floor
    bool raised = false;         ///< an end of the estimate lay below the floor
    bool below_floor = false;    ///< what the file states cannot be right
    Estimate cooling, suction;   ///< L
    double circulation_pump = 0; ///< kJ, instead of cooling water from the tap
    double diaphragm_pump = 0;   ///< kJ, instead of the water of an aspirator
};

struct RouteUse {
    std::vector<StageUse> stages;
    double minutes = 0, hood_minutes = 0;            ///< of the stages that state a time
    int silent_stages = 0;                           ///< that state none and take some: no separation alone
    double floor = 0;                                ///< kJ, for one run of the route
    Estimate socket;                                 ///< kJ
    Estimate cooling, suction;                       ///< L
    double circulation_pump = 0, diaphragm_pump = 0; ///< kJ
};

/// \param evaluation  of the route at its amounts as written
RouteUse estimate_use(const FlatRoute& flat, const Evaluation& evaluation, const UtilityData& data);

} // namespace routeweigh::utilities
