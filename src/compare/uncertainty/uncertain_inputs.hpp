// SPDX-License-Identifier: MIT
// Everything that is not known exactly about the inputs of some routes, as one flat list of independent
// quantities, and what each of them does to the inputs of which route.
//
// What several charges or several routes have in common is one quantity: the error of a balance or a
// cylinder, the strength of a bottle. So their correlation is kept, and routes are compared on the same
// bottle.
#pragma once

#include "assess/assessment.hpp"
#include "compare/uncertainty/model.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace routeweigh {

/// Yields or masses found by many hands, to be drawn from in place of what the route file says.
struct FoundYields {
    std::string route;          ///< id
    int step = -1;              ///< of the route; below 0: its last
    std::vector<double> yields; ///< fractions of the theoretical yield, or g where the file gives a mass
};

/// What the atomic weight of one element does to the outputs of a FigureModel. To first order, which is
/// exact enough: weights are known to one part in ten thousand and better.
struct ElementEffect {
    int element = 0;
    std::vector<double> slope; ///< by output: its change per g/mol
};

struct UncertaintyOptions {
    std::vector<FoundYields> found;
    std::vector<ElementEffect> elements; ///< see element_effects(); empty: atomic weights are taken as exact
    /// Half width (fraction) of what an assumed yield is varied by where nothing else is said of it; 0: it is
    /// kept. A figure that rests on such a yield still has no share of runs.
    double assumed_yield_half_width = 0;
};

struct InputEffect {
    enum class Target { charged, fraction, isolated, reused };
    std::size_t input; ///< in UncertainInputs::inputs
    Target target;     ///< which array of Inputs
    std::size_t index; ///< in that array
    double factor;     ///< what is added there is factor x (value of the input - origin)
    double origin;     ///< value of the input at which the route is as written
};

struct UncertainInputs {
    std::vector<UncertainInput> inputs;
    std::vector<std::vector<InputEffect>> effects; ///< by route
    /// By route: steps whose yield is assumed and has no results to draw from.
    std::vector<std::vector<int>> assumed_steps;
    /// Of atomic weights, by element; the inputs from `first_element` on are how far each is off.
    std::vector<ElementEffect> elements;
    std::size_t first_element = 0;

    bool empty() const { return inputs.empty(); }
};

/// \throws InputError  found yields outside the physical range, no such route or step
UncertainInputs uncertain_inputs(const std::vector<const Assessment*>& routes,
                                 const UncertaintyOptions& options);

/// Sets `inputs` to the nominal ones of the route and adds what the draw x does.
/// \return number of inputs that had to be held at the end of their physical range
template<Number N>
N apply(const std::vector<InputEffect>& effects, const InputsOf<N>& nominal, std::span<const N> x,
        const FlatRoute& route, InputsOf<N>& inputs);

} // namespace routeweigh
