// SPDX-License-Identifier: MIT
// Reads the hazard scheme and the bandings from their data files.
#pragma once

#include "assess/hazard/banding.hpp"
#include "assess/hazard/scheme.hpp"
#include "input/source.hpp"

#include <vector>

namespace routeweigh {

class Catalogue;

// Both throw InputError with every problem of the file.
HazardScheme read_hazard_scheme(const Source& source);
Banding read_banding(const Source& source);

struct HazardSchemes {
    HazardScheme score;
    std::vector<Banding> bandings; // in the order of HazardScheme::banding_ids
};

// The scheme "hazard_score" of the catalogue and the bandings that it names. Throws InputError where one is
// missing or faulty.
HazardSchemes read_hazard_schemes(const Catalogue& catalogue);

} // namespace routeweigh
