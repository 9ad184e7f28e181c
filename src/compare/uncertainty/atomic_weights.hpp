// SPDX-License-Identifier: MIT
// What the atomic weights of the elements do to the figures of routes: each is moved up and down, the routes
// are read again with it, and the figures compared. So it also counts where a chemist would forget it, in an
// amount given in mol or a yield given in per cent.
#pragma once

#include "compare/uncertainty/figure_model.hpp"

#include <functional>

namespace routeweigh {

/// FigureModel::nominal() of the same routes, read with these weights.
using FiguresWith = std::function<std::vector<double>(const AtomicWeights&)>;

/// One entry for every element of what goes into the routes, by atomic number.
std::vector<ElementEffect> element_effects(const Comparison& comparison, const FiguresWith& figures_with);

} // namespace routeweigh
