// SPDX-License-Identifier: MIT
// What making the streams of a step ready for their containers uses up: base, reducer, test papers.
//
// Amounts are those of the quench plan, so that lists and costs follow what the waste section says.
#pragma once

#include "assess/streams/quench_plan.hpp"
#include "chemistry/material.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::streams {

struct TreatmentSupply {
    const Material* material = nullptr;
    double grams = 0;              ///< for one pot
    std::vector<std::string> uses; ///< "base for filtrate and washes"
};

struct TreatmentSupplies {
    std::vector<TreatmentSupply> weighed;
    std::vector<std::string> unweighed; ///< what goes by paper or drop by drop: "pH paper"
};

/// Of one pot, beyond what the route charges as its quench. What takes the electrons of an oxidiser is
/// counted with the larger excess of the table, for it has to suffice; base and what goes by no electrons
/// without excess, for tests decide. Nothing for streams that nothing is done to. \param step  its id where
/// lists join several steps, whose streams often share a name; else empty
TreatmentSupplies treatment_supplies(const QuenchPlan& plan, const QuenchTable& table,
                                     const Catalogue& catalogue, std::string_view step = {});

} // namespace routeweigh::streams
