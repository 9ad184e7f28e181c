// SPDX-License-Identifier: MIT
// The same-auxiliaries boundary: drown-out and flask rinse of a route replaced by those of a baseline, scaled
// by theoretical moles of product.
#pragma once

#include "assess/assessment.hpp"

namespace routeweigh {

/// What the boundary needs of one evaluation of a route, for one run of its last step.
struct Auxiliaries {
    double inputs, drown_out, product; ///< g
    double theory;                     ///< mol, of the last step
};
Auxiliaries auxiliaries_of(const RouteFigures::Values& values, int final_step);
Auxiliaries auxiliaries_of(const RouteFigures::Values& values, const FlatRoute& route);

/// The baseline's drown-out and rinse (g), for as many theoretical moles of product as one run of the route
/// has.
double replaced_auxiliaries(const Auxiliaries& route, const Auxiliaries& baseline);

/// Process mass intensity (g/g) in the same-auxiliaries boundary.
double intensity_with_same_auxiliaries(const Auxiliaries& route, const Auxiliaries& baseline);

} // namespace routeweigh
