// SPDX-License-Identifier: MIT
// What a front end asks for about waste: rules of a house and logs of its containers in, checked data out.
#pragma once

#include "assess/streams/route_waste.hpp"
#include "chemistry/catalogue.hpp"
#include "input/field.hpp"
#include "input/source.hpp"

#include <string>
#include <vector>

namespace routeweigh {

/// Jurisdictions that rules are shipped for: "US" and "EU".
const std::vector<std::string>& shipped_jurisdictions();

/// Whose rules sort waste where nothing else is said.
inline constexpr const char* usual_local_rules = "US";

/// \param problems  takes the warnings
/// \throws InputError with every problem of every log; two logs of one container are one
std::vector<streams::ContainerLog> read_container_logs(const std::vector<SourcePtr>& sources,
                                                       const streams::StreamRules& rules, Problems& problems);

} // namespace routeweigh
