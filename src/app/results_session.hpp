// SPDX-License-Identifier: MIT
// A route and the table of a class in; what the class got and what to look at out.
#pragma once

#include "assess/results/class_results.hpp"
#include "writing/blocks.hpp"
#include "writing/workbook.hpp"

#include <string>

namespace routeweigh {

/// \param step  id of a step of the route; empty for the last
/// \param problems  receives warnings, and errors of rows that were left out
/// \throws InputError a table that cannot be read at all; CallError no such step
results::ClassResults read_results(const Assessment& route, const std::string& step, const std::string& file,
                                   const ReadBytes& bytes, Problems& problems);

writing::Document results_document(const Assessment& route, const results::ClassResults& results);

/// \throws CallError for a class so long that its rows are not kept
writing::Workbook results_workbook(const Assessment& route, const results::ClassResults& results);

} // namespace routeweigh
