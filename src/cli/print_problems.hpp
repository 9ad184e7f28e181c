// SPDX-License-Identifier: MIT
// Shows problems to a person: message, source line, caret.
#pragma once

#include "base/problem.hpp"

#include <vector>

namespace routeweigh::cli {

void print_problems(const std::vector<Problem>& problems);

} // namespace routeweigh::cli
