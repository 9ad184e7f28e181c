// SPDX-License-Identifier: MIT
// A composition as somebody states it: a small JSON file, or words such as "ethanol 95 %=40 %".
//
// An ingredient is a substance or a material, which brings its own water. One ingredient may leave its share
// open; it takes what is left to 100 %.
#pragma once

#include "assess/mixture/mixture.hpp"
#include "input/source.hpp"

#include <string>
#include <vector>

namespace routeweigh {

class Catalogue;

/// hazard-data/mixture.schema.json describes the file. \throws InputError with every problem of it
Mixture read_mixture(const SourcePtr& source, const Catalogue& catalogue);

/// "NAME=SHARE", or "NAME" for the rest. \throws InputError that names each faulty word
Mixture read_mixture(const std::vector<std::string>& words, const Catalogue& catalogue);

} // namespace routeweigh
