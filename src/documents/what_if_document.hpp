// SPDX-License-Identifier: MIT
// A route before and after a change, figure by figure; and what there is to change.
#pragma once

#include "compare/comparison.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

/// \pre two routes, the parent as baseline and then the changed one, which records its parentage; or a third
/// as baseline, and what is counted against it is shown too
writing::Document what_if_document(const Comparison& comparison);

/// Every numeric input of a route with its place in the file, its value and its pointer.
writing::Document inputs_document(const Route& route);

} // namespace routeweigh
