// SPDX-License-Identifier: MIT
// What stands in a waste container at the end of a class, by substance: the streams that go there, added up.
#pragma once

#include "assess/streams/route_waste.hpp"

#include <set>
#include <string>
#include <vector>

namespace routeweigh::streams {

struct ContainerContents {
    const Container* container = nullptr; ///< nullptr: a bottle of its own
    std::string name;                     ///< of the container; what the bottle must be and what goes into it
    std::vector<std::string> streams;     ///< "step: stream", in order
    Composition composition;              ///< of the whole class; rinses of the allowance are not in it
    int containers = 1;                   ///< that the class fills
    bool vented = false;                  ///< something speaks against a tight cap
    std::set<Treatment::Kind> before; ///< what is done to some of it first; the composition is before that
    bool washings = false; ///< of what stays on the product: the composition is before anything washes it off
    bool awaits_quench = false; ///< stands at the bench until then, and is in another one afterwards

    bool is_for_recovery() const {
        return container != nullptr && container->kind == ContainerKind::recovery;
    }
};

/// Every liquid or solid stream that is collected, in the nominal reading: grams of the ledger times the
/// pots; of a solvent for recovery all of it. Gas, vapour, what else is recovered and what stays on the
/// product are no contents of a container. What waits for its quench at the bench has a container of its own
/// until then, besides: in the reading that leaves something to quench.
std::vector<ContainerContents> contents_of(const RouteWaste& waste, double pots, const LocalRules& local);

} // namespace routeweigh::streams
