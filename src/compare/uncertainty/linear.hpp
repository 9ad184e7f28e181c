// SPDX-License-Identifier: MIT
// Propagation of uncertainty to first order (JCGM 100:2008, 5.1), with what each input contributes.
#pragma once

#include "compare/uncertainty/model.hpp"

namespace routeweigh {

struct LinearResult {
    std::vector<double> value;     ///< by output, at the means of the inputs
    std::vector<double> deviation; ///< by output: combined standard uncertainty
    /// By output and input: the change of the output by one standard deviation of the input, with its sign,
    /// taken as half the difference between one deviation up and one down (JCGM 100:2008, 5.1.3, note 2).
    std::vector<std::vector<double>> contribution;
};

LinearResult propagate_linearly(const Model& model);

} // namespace routeweigh
