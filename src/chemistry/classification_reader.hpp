// SPDX-License-Identifier: MIT
// Reads the hazard part of a substance: GHS entries, the entry of its solution, exposure limits.
#pragma once

#include "chemistry/classification.hpp"
#include "input/field.hpp"

#include <string>
#include <vector>

namespace routeweigh {

// What is wrong goes to the collector of the field.
std::vector<GhsEntry> read_ghs_entries(const Field& list);
SolutionClassification read_solution_classification(const Field& field);
ExposureLimit read_exposure_limit(const Field& field);
// Adds the supplemental statements of a row of CLP Annex VI, each once.
void read_supplemental(const Field& annex_row, std::vector<std::string>& statements);

} // namespace routeweigh
