// SPDX-License-Identifier: MIT
// Results of many hands as a plain list: one yield or one mass a line.
#pragma once

#include "compare/uncertainty/certainty.hpp"
#include "input/source.hpp"

namespace routeweigh {

/// Reads "71 %" or "1.52 g" from every line; empty lines and what follows "#" are passed over. The results
/// are of the last step, and are turned into what the route file states, a yield or a mass. \throws
/// InputError with every line that is neither, a yield above 100 %, an empty list, no such route
FoundYields read_found_yields(const std::string& route_id, const SourcePtr& source,
                              const Comparison& comparison);

} // namespace routeweigh
