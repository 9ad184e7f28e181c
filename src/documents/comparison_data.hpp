// SPDX-License-Identifier: MIT
// A comparison as programs read it: values unrounded, a missing one null with its reason.
#pragma once

#include "compare/uncertainty/certainty.hpp"
#include "writing/machine_tree.hpp"

namespace routeweigh::documents {

/// The tree behind JSON; src/app/comparison.schema.json describes it.
writing::MachineTree comparison_tree(const Comparison& comparison, const Certainty* drawn = nullptr);

/// The rows behind CSV: one figure of one route a row.
writing::DataRows comparison_rows(const Comparison& comparison);

} // namespace routeweigh::documents
