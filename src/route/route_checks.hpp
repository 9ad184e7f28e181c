// SPDX-License-Identifier: MIT
// Chemistry that a route file can get wrong although every name in it is known.
#pragma once

#include "input/field.hpp"
#include "route/route.hpp"

namespace routeweigh {

/// Records errors (the route must not be evaluated then) and warnings, each with its place in the file.
void check_route(const Route& route, Problems& problems);

/// The place of a part of the route in its file, with line and excerpt.
Place place_of(const Route& route, const std::string& pointer);

} // namespace routeweigh
