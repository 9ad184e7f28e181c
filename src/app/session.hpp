// SPDX-License-Identifier: MIT
// What a front end asks for: route texts in, a checked comparison out. Opens no file and prints nothing.
#pragma once

#include "chemistry/catalogue.hpp"
#include "compare/comparison.hpp"
#include "input/csv_reader.hpp"
#include "input/field.hpp"

#include <memory>
#include <string>
#include <vector>

namespace routeweigh {

/// Reads every source and reports the problems of all of them together.
/// \param problems  receives warnings
/// \throws InputError with every problem of every file
std::vector<Route> read_routes(const std::vector<SourcePtr>& sources, const Catalogue& catalogue,
                               Problems& problems);

/// The assessed routes, each against the baseline. `rules` must outlive the result.
/// \param baseline_id  id of a route; empty for the first
/// \throws InputError when routes share an id or make different products
/// \throws CallError when no route has the baseline's id
Comparison compare_routes(std::vector<Route> routes, const std::string& baseline_id,
                          const AssessmentRules& rules);

/// The call itself is wrong: an unknown id or figure, a missing path.
class CallError : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

} // namespace routeweigh
