// SPDX-License-Identifier: MIT
// Does it fit: the streams of a class, container by container, at the fill limit.
#pragma once

#include "assess/streams/container_decision.hpp"
#include "assess/streams/local_rules.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

/// What one stream of one pot brings to a container.
struct StreamVolume {
    std::string name;
    double millilitres = 0; ///< for one run of the route
    double assumed = 0;     ///< mL of it at 1 g/mL for want of a density
};

struct ContainerFit {
    const Container* container = nullptr;
    std::vector<StreamVolume> streams;
    double present = 0;   ///< mL that it already holds
    double per_pot = 0;   ///< mL
    double volume = 0;    ///< mL of the class with allowance
    double usable = 0;    ///< mL in one container at the fill limit
    double room = 0;      ///< mL left at the fill limit in the container that stands there
    int containers = 0;   ///< new ones, beside the one that stands there
    double last_full = 0; ///< share of the nominal size that the last one ends at
    bool fits = false;    ///< into what stands there
    bool call = false;    ///< the last one ends at or above the share at which to call for pickup
    std::vector<std::string> vent;
    std::string words;
};

/// What stands there and has begun.
struct Begun {
    double present = 0; ///< mL that it holds; 0: an empty one, counted with the new ones
    double size = 0;    ///< mL; 0: as the local rules have it
};

/// \param pots  runs of the route
ContainerFit fit_container(const Container& container, std::vector<StreamVolume> streams, double pots,
                           const LocalRules& local, Begun begun = {});

} // namespace routeweigh::streams
