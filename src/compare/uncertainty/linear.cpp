// SPDX-License-Identifier: MIT
#include "compare/uncertainty/linear.hpp"

#include "compare/uncertainty/monte_carlo.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

constexpr std::size_t inputs_at_a_time = 16;

} // namespace

LinearResult propagate_linearly(const Model& model) {
    LinearResult result;
    const std::vector<double> means = model.means();
    result.contribution.assign(model.outputs, std::vector<double>(means.size(), 0.0));
    const Evaluate evaluate = model.evaluator();
    result.value = model.evaluate(evaluate, means);
    // Each input one deviation up and one down: two rows an input, some inputs at a time.
    DrawRows x, y;
    for (std::size_t first = 0; first < means.size(); first += inputs_at_a_time) {
        const std::size_t count = std::min(inputs_at_a_time, means.size() - first);
        x.resize(2 * count, means.size());
        y.resize(2 * count, model.outputs);
        for (std::size_t row = 0; row < x.rows; ++row) {
            std::copy(means.begin(), means.end(), x.row(row).begin());
            const std::size_t input = first + row / 2;
            const double deviation = model.inputs[input].distribution.deviation();
            x.row(row)[input] += row % 2 == 0 ? deviation : -deviation;
        }
        evaluate(x, y);
        for (std::size_t i = 0; i < count; ++i)
            for (std::size_t o = 0; o < model.outputs; ++o)
                if (const double part = (y.row(2 * i)[o] - y.row(2 * i + 1)[o]) / 2.0;
                    !(std::abs(part) <= rounding_of_figures * std::abs(result.value[o])))
                    result.contribution[o][first + i] = part;
    }
    for (const std::vector<double>& row : result.contribution) {
        double square = 0.0;
        for (const double part : row)
            square += part * part;
        result.deviation.push_back(std::sqrt(square));
    }
    return result;
}

} // namespace routeweigh
