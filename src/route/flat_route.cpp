// SPDX-License-Identifier: MIT
#include "route/flat_route.hpp"

#include "base/index.hpp"

#include <cstddef>

namespace routeweigh {

std::span<const Inflow> FlatRoute::inflows_of(int step) const {
    const std::vector<FlatStage>& stages = steps_[at(step)].stages;
    return inflows().subspan(at(stages.front().first_inflow),
                             at(stages.back().last_inflow - stages.front().first_inflow));
}

Evaluation FlatRoute::evaluate(const Inputs& inputs) const {
    Evaluation result;
    evaluate(inputs, result);
    return result;
}

std::vector<std::vector<double>> FlatRoute::extents(int index, const Inputs& inputs) const {
    std::vector<std::vector<double>> result;
    for (const Stage& stage : route_->steps[at(index)].stages)
        result.emplace_back(stage.reactions.size(), 0.0);
    bool alike = true;
    run_pot<double>(index, inputs, Reading::formation, {}, nullptr, alike, &result);
    return result;
}

} // namespace routeweigh
