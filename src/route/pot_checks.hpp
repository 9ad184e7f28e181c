// SPDX-License-Identifier: MIT
// Checks that need the reactions to be worked through: fed, started, bounded, enough for the isolated
// product.
#pragma once

#include "route/check_report.hpp"

namespace routeweigh {

/// Whether every reaction can be fed from what is charged and made.
void check_graph(const Route& route, CheckReport& report);

/// The route must have passed all other checks, for it is compiled and evaluated here.
void check_pots(const Route& route, CheckReport& report);

} // namespace routeweigh
