// SPDX-License-Identifier: MIT
// Reads the limits of a jurisdiction and the building blocks that were chosen.
#pragma once

#include "assess/mixture/limits.hpp"
#include "input/source.hpp"

#include <map>
#include <string>

namespace routeweigh {

// `blocks` switches building blocks on or off by id; the others stay as the file has them. Throws InputError
// with every problem of the file, and where a block is unknown.
MixtureLimits read_mixture_limits(const Source& source, const std::map<std::string, bool>& blocks = {});

} // namespace routeweigh
