// SPDX-License-Identifier: MIT
#include "compare/uncertainty/atomic_weights.hpp"

#include <cmath>
#include <set>

namespace routeweigh {

std::vector<ElementEffect> element_effects(const Comparison& comparison, const FiguresWith& figures_with) {
    std::set<int> elements;
    for (const auto& route : comparison.routes())
        for (const Inflow& inflow : route->flat().inflows())
            for (const auto& [element, count] : inflow.substance->formula.atoms)
                elements.insert(element);
    std::vector<ElementEffect> effects;
    for (const int element : elements) {
        const double step = element_weight_uncertainty(element);
        AtomicWeights up, down;
        up.move(element, step);
        down.move(element, -step);
        ElementEffect effect{element, figures_with(up)};
        const std::vector<double> low = figures_with(down);
        for (std::size_t y = 0; y < low.size(); ++y) {
            effect.slope[y] = (effect.slope[y] - low[y]) / (2.0 * step);
            if (std::isnan(effect.slope[y])) effect.slope[y] = 0.0; // the figure has no value either way
        }
        effects.push_back(std::move(effect));
    }
    return effects;
}

} // namespace routeweigh
