// SPDX-License-Identifier: MIT
// The option --results: which results belong to which route, said alike in every command.
#pragma once

#include "app/found_yields.hpp"

#include <string>
#include <vector>

namespace routeweigh::cli {

struct ResultsOption {
    std::string route; ///< id
    std::string file;
};

/// "ID=FILE", or "FILE" where there is only one route. \param ids  of the routes of the call
/// \throws CallError where neither fits, and for an id that none of the routes has
ResultsOption read_results_option(const std::string& words, const std::vector<std::string>& ids);

/// What every --results of a call found, for the routes as written. \param problems  receives warnings
/// \throws CallError also for two of one route and for a folder; InputError see read_found_yields()
std::vector<FoundYields> read_all_found(const std::vector<std::string>& options, const Comparison& as_written,
                                        Problems& problems);

} // namespace routeweigh::cli
