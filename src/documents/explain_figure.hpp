// SPDX-License-Identifier: MIT
// One figure of one route explained: formula, terms with their places in the route file, the numbers put in.
#pragma once

#include "compare/comparison.hpp"
#include "writing/blocks.hpp"

#include <cstddef>
#include <string_view>

namespace routeweigh {

/// \pre the route has a figure of this id
writing::Document explain_figure(const Assessment& route, std::string_view figure);

/// The same within a comparison, which adds the figures that need a baseline.
writing::Document explain_figure(const Comparison& comparison, std::size_t route, std::string_view figure);

} // namespace routeweigh
