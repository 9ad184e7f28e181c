// SPDX-License-Identifier: MIT
#include "assess/same_auxiliaries.hpp"

namespace routeweigh {

Auxiliaries auxiliaries_of(const RouteFigures::Values& values, const FlatRoute& route) {
    return auxiliaries_of(values, route.final_step());
}

double replaced_auxiliaries(const Auxiliaries& route, const Auxiliaries& baseline) {
    return baseline.drown_out * route.theory / baseline.theory;
}

double intensity_with_same_auxiliaries(const Auxiliaries& route, const Auxiliaries& baseline) {
    return (route.inputs - route.drown_out + replaced_auxiliaries(route, baseline)) / route.product;
}

} // namespace routeweigh
