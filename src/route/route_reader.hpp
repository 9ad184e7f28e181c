// SPDX-License-Identifier: MIT
// Reads and checks a route file.
#pragma once

#include "chemistry/catalogue.hpp"
#include "input/field.hpp"
#include "route/route.hpp"

namespace routeweigh {

/// The words a route may carry about the standing of its numbers.
const std::vector<std::string>& route_statuses();

/// \param problems  receives warnings
/// \throws InputError with every problem of the file, spelling and chemistry alike
Route read_route(const SourcePtr& source, const Catalogue& catalogue, Problems& problems);

} // namespace routeweigh
