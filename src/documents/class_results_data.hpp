// SPDX-License-Identifier: MIT
// What programs read of the results of a class.
#pragma once

#include "assess/results/class_results.hpp"
#include "writing/machine_tree.hpp"

#include <string>

namespace routeweigh::documents {

writing::MachineTree class_results_tree(const Assessment& route, const results::ClassResults& results);

/// One row for each row of the class that was kept.
writing::DataRows class_results_rows(const results::ClassResults& results);

/// Words of all findings of a row, "; " between them.
std::string findings_text(const results::KeptRow& row);

std::string_view words(results::OwnNumber::Kind kind);
std::string_view unit(results::OwnNumber::Kind kind);

} // namespace routeweigh::documents
