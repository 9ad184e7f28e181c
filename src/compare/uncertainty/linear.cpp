// SPDX-License-Identifier: MIT
#include "compare/uncertainty/linear.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh {

LinearResult propagate_linearly(const Model& model) {
    LinearResult result;
    std::vector<double> x = model.means();
    result.contribution.assign(model.outputs, std::vector<double>(x.size(), 0.0));
    const Evaluate evaluate = model.evaluator();
    result.value = model.evaluate(evaluate, x);
    for (std::size_t i = 0; i < x.size(); ++i) {
        const Distribution& distribution = model.inputs[i].distribution;
        const double mean = x[i];
        const double deviation = distribution.deviation();
        if (deviation == 0.0) continue;
        x[i] = mean + deviation;
        const std::vector<double> up = model.evaluate(evaluate, x);
        x[i] = mean - deviation;
        const std::vector<double> down = model.evaluate(evaluate, x);
        x[i] = mean;
        for (std::size_t y = 0; y < model.outputs; ++y)
            result.contribution[y][i] = (up[y] - down[y]) / 2.0;
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
