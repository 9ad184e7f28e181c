// SPDX-License-Identifier: MIT
// Classifications that a front end asks for: bottles and streams of routes, and any stated mixture.
#pragma once

#include "assess/mixture/jurisdiction.hpp"
#include "assess/streams/local_rules.hpp"
#include "input/source.hpp"
#include "route/route.hpp"
#include "writing/blocks.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

class Catalogue;

/// A jurisdiction by name, with building blocks of the UN system to switch on and off by id.
struct JurisdictionChoice {
    std::string name = "EU";
    std::vector<std::string> with, without;
};

/// "EU", "UN", "US".
std::vector<std::string> jurisdiction_names();

/// Whose limits classify where these rules hold.
std::string jurisdiction_name(const streams::LocalRules& local);

/// \throws CallError for an unknown name, a block switched both ways, or blocks outside the UN system
Jurisdiction chosen(const JurisdictionChoice& choice);

/// A composition in words or in a file, and what is known of the whole. What is stated here goes before what
/// the file says.
struct MixtureRequest {
    std::vector<std::string> ingredients; ///< "NAME=SHARE", or "NAME" for the rest
    SourcePtr file;                       ///< in their place
    std::string name;
    std::string phase;                      ///< "solid", "liquid", "gas" or ""
    std::string flash_point, boiling_point; ///< "36 degC" or ""
    std::optional<double> ph, viscosity;    ///< viscosity in mm2/s at 40 degC
    bool pair = false;                      ///< acids and bases react first
};

/// \throws InputError where the composition cannot be, CallError where a temperature cannot be read
writing::Document classify_mixture(const MixtureRequest& request, const Catalogue& catalogue,
                                   const Jurisdiction& jurisdiction);

/// \param routes  passed their checks
writing::Document classify_routes(const std::vector<Route>& routes, const Catalogue& catalogue,
                                  const Jurisdiction& jurisdiction);

} // namespace routeweigh
