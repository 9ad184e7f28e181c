// SPDX-License-Identifier: MIT
// A measurement model as JCGM 100 and JCGM 101 have it: output quantities that are functions of input
// quantities, each input with what is known of it.
#pragma once

#include "base/distribution.hpp"

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace routeweigh {

struct UncertainInput {
    std::string name;
    Distribution distribution;
};

/// y from x, by position; a quantity that has no value is NaN.
using Evaluate = std::function<void(std::span<const double> x, std::span<double> y)>;

struct Model {
    std::vector<UncertainInput> inputs; ///< independent of each other
    std::size_t outputs = 0;
    /// Makes an evaluator; every thread uses one of its own.
    std::function<Evaluate()> evaluator;

    std::vector<double> means() const {
        std::vector<double> result;
        result.reserve(inputs.size());
        for (const UncertainInput& input : inputs)
            result.push_back(input.distribution.mean());
        return result;
    }
};

} // namespace routeweigh
