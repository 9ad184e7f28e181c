// SPDX-License-Identifier: MIT
// What making the streams of a step ready for their containers uses up: base, reducer, test papers.
//
// Amounts are those of the quench plan, so that lists and costs follow what the waste section says.
#pragma once

#include "assess/streams/quench_plan.hpp"
#include "chemistry/material.hpp"

#include <string>
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

/// Of one pot. A reducer is counted with the larger excess of the table, for it has to suffice; base without
/// excess, for paper decides. Nothing for streams that nothing is done to.
TreatmentSupplies treatment_supplies(const QuenchPlan& plan, const QuenchTable& table,
                                     const Catalogue& catalogue);

} // namespace routeweigh::streams
