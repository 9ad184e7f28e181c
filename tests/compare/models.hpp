// SPDX-License-Identifier: MIT
// Small models for tests of propagation.
#pragma once

#include "compare/uncertainty/model.hpp"

#include <utility>

namespace routeweigh::test {

/// One output, the same function on every thread.
template<typename Function>
Model one_output(const std::vector<Distribution>& inputs, Function function) {
    Model model;
    for (const Distribution& distribution : inputs)
        model.inputs.push_back({"x" + std::to_string(model.inputs.size() + 1), distribution});
    model.outputs = 1;
    model.evaluator = [function] {
        return [function](const DrawRows& x, DrawRows& y) {
            for (std::size_t row = 0; row < x.rows; ++row)
                y.row(row)[0] = function(x.row(row));
        };
    };
    return model;
}

} // namespace routeweigh::test
