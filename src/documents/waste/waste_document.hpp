// SPDX-License-Identifier: MIT
// Where the waste of one or more routes goes: handout, containers, what meets there, quench, fit.
#pragma once

#include "assess/streams/route_waste.hpp"
#include "writing/blocks.hpp"

#include <span>
#include <vector>

namespace routeweigh {

/// All that the document is made of; what it points to must outlive the call.
struct WasteSubject {
    const streams::StreamRules* rules;
    const std::vector<streams::ContainerLog>* logs;
    std::span<const streams::ClassWaste> routes; ///< each worked by itself by the whole class
    double students = 1;
    double team = 1; ///< students at one pot
};

writing::Document waste_document(const WasteSubject& subject);

} // namespace routeweigh
