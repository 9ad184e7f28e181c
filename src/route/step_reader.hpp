// SPDX-License-Identifier: MIT
// Reads one step of a route file: stages, charges, reactions, separations.
#pragma once

#include "chemistry/catalogue.hpp"
#include "input/field.hpp"
#include "route/route.hpp"

namespace routeweigh {

/// Problems are recorded at their fields; the step returned then has gaps (null pointers) and must not be
/// used.
Step read_step(const Field& field, const Catalogue& catalogue);

} // namespace routeweigh
