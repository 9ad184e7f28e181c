// SPDX-License-Identifier: MIT
// Reads an equation between substances of the catalogue and insists that it balances.
#pragma once

#include "chemistry/catalogue.hpp"
#include "input/field.hpp"
#include "route/route.hpp"

namespace routeweigh {

/// An equation that does not balance is a problem that names the elements and suggests coefficients, or says
/// why there are none.
SubstanceEquation read_equation(const Field& field, const Catalogue& catalogue);

} // namespace routeweigh
