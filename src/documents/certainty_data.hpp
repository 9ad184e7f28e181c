// SPDX-License-Identifier: MIT
// The certainty of a comparison as data for programs.
#pragma once

#include "compare/uncertainty/certainty.hpp"
#include "writing/machine_tree.hpp"

namespace routeweigh::documents {

writing::MachineTree certainty_tree(const Comparison& comparison, const Certainty& certainty);

} // namespace routeweigh::documents
