// SPDX-License-Identifier: MIT
// The equation of a whole route: overall equations of its steps, each multiplied so that every intermediate
// cancels.
#pragma once

#include "route/route.hpp"
#include "route/scale.hpp"

#include <vector>

namespace routeweigh {

/// All amounts in mol per mol of final product.
struct NetEquation {
    struct Part {
        const Substance* substance;
        double moles; ///< above 0
    };
    std::vector<double> runs;       ///< by step: how often its overall equation is taken
    std::vector<Part> gross_inputs; ///< every bought substance on the left of a step
    std::vector<Part> inputs;       ///< after by-products that the file feeds to another step are cancelled
    std::vector<Part> outputs;      ///< by-products that are left
};

/// \pre the steps feed each other without a loop that eats more than it makes
NetEquation net_equation(const Route& route, const ScalePlan& plan);

} // namespace routeweigh
