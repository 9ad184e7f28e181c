// SPDX-License-Identifier: MIT
// Does it fit: the streams of a class, container by container, at the fill limit.
#pragma once

#include "assess/streams/container_decision.hpp"
#include "assess/streams/local_rules.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh::streams {

struct ClassSize {
    double pots = 1; ///< runs of the route
    /// Share added for spills and rinses; the default of the local rules where not given.
    std::optional<double> allowance;
    std::optional<double> fill_limit;
};

/// What one stream of one pot brings to a container.
struct StreamVolume {
    std::string name;
    double millilitres = 0; ///< for one run of the route
    double assumed = 0;     ///< mL of it at 1 g/mL for want of a density
};

struct ContainerFit {
    const Container* container = nullptr;
    std::vector<StreamVolume> streams;
    double per_pot = 0;   ///< mL
    double volume = 0;    ///< mL of the class with allowance
    double usable = 0;    ///< mL in one container at the fill limit
    double room = 0;      ///< mL left in the container that stands there
    int containers = 0;   ///< new ones, beside the one that stands there
    double last_full = 0; ///< share of the nominal size that the last one ends at
    bool fits = false;    ///< into what stands there
    bool call = false;    ///< the last one ends at or above the share at which to call for pickup
    std::vector<std::string> vent;
    std::string words;
};

/// \param present  mL that the container already holds; 0: an empty one
ContainerFit fit_container(const Container& container, std::vector<StreamVolume> streams,
                           const ClassSize& size, const LocalRules& local, double present = 0);

} // namespace routeweigh::streams
