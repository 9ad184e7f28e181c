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

/// Rows of numbers, one row a draw. A row may be empty: then nothing varies.
struct DrawRows {
    std::size_t rows = 0, columns = 0;
    std::vector<double> values;

    void resize(std::size_t count, std::size_t width) {
        rows = count;
        columns = width;
        values.resize(count * width);
    }
    std::span<double> row(std::size_t index) { return {values.data() + index * columns, columns}; }
    std::span<const double> row(std::size_t index) const {
        return {values.data() + index * columns, columns};
    }
};

/// y from x, by position, row by row; `y` has its size. A quantity that has no value is NaN. Many rows at a
/// time, so that what a part of the model needs stays in the cache.
using Evaluate = std::function<void(const DrawRows& x, DrawRows& y)>;

struct Model {
    std::vector<UncertainInput> inputs; ///< independent of each other
    std::size_t outputs = 0;
    /// Makes an evaluator; every thread uses one of its own.
    std::function<Evaluate()> evaluator;

    /// Of one set of inputs.
    std::vector<double> evaluate(const Evaluate& evaluate, std::span<const double> x) const {
        const DrawRows in{1, x.size(), {x.begin(), x.end()}};
        DrawRows out{1, outputs, std::vector<double>(outputs)};
        evaluate(in, out);
        return out.values;
    }

    std::vector<double> means() const {
        std::vector<double> result;
        result.reserve(inputs.size());
        for (const UncertainInput& input : inputs)
            result.push_back(input.distribution.mean());
        return result;
    }
};

} // namespace routeweigh
