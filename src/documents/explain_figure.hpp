// SPDX-License-Identifier: MIT
// One figure of one route explained: formula, terms with their places in the route file, the numbers put in.
#pragma once

#include "compare/comparison.hpp"
#include "writing/blocks.hpp"

#include <cstddef>
#include <string_view>

namespace routeweigh {

/// \param figure  id of one of figures_of(), those that need a baseline among them
writing::Document explain_figure(const Comparison& comparison, std::size_t route, std::string_view figure);

} // namespace routeweigh
