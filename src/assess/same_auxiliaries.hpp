// SPDX-License-Identifier: MIT
// The same-auxiliaries boundary: drown-out and flask rinse of a route replaced by those of a baseline, scaled
// by theoretical moles of product.
#pragma once

#include "assess/assessment.hpp"

#include <cstddef>
#include <string_view>

namespace routeweigh {

/// Id of the process mass intensity within this boundary.
inline constexpr std::string_view same_auxiliaries_id = "same_auxiliaries_process_mass_intensity";

/// What the boundary needs of one evaluation of a route, for one run of its last step.
template<Number N>
struct AuxiliariesOf {
    N inputs, drown_out, product; ///< g
    N theory;                     ///< mol, of the last step
};
using Auxiliaries = AuxiliariesOf<double>;
template<Number N>
AuxiliariesOf<N> auxiliaries_of(const RouteFigures::ValuesOf<N>& values, int final_step) {
    return {values.totals.inputs, values.totals.drown_out, values.totals.product,
            values.evaluation.steps[static_cast<std::size_t>(final_step)].theory};
}
Auxiliaries auxiliaries_of(const RouteFigures::Values& values, const FlatRoute& route);

/// The baseline's drown-out and rinse (g), for as many theoretical moles of product as one run of the route
/// has.
double replaced_auxiliaries(const Auxiliaries& route, const Auxiliaries& baseline);

/// Process mass intensity (g/g) in the same-auxiliaries boundary.
double intensity_with_same_auxiliaries(const Auxiliaries& route, const Auxiliaries& baseline);

} // namespace routeweigh
