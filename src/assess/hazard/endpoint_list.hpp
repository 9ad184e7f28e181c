// SPDX-License-Identifier: MIT
// The families of endpoints there are, one declaration each.
#pragma once

#include "assess/hazard/endpoint.hpp"

namespace routeweigh {

inline constexpr double mg_per_g = 1000.0; // figures are per g, limits and doses in mg

extern const EndpointFamily inhalation_family; // m3 of air to the exposure limit
extern const EndpointFamily aquatic_family;    // m3 of water to the class limit
extern const EndpointFamily acute_dose_family; // kg of body mass to the dose
extern const EndpointFamily graded_family;     // g at the serious level

} // namespace routeweigh
