// SPDX-License-Identifier: MIT
// What is said of a class in a call, and its reading.
#pragma once

#include "assess/stock/stock_list.hpp"

#include <string>
#include <vector>

namespace routeweigh {

struct ClassRequest {
    int students = 1; ///< in each section
    int sections = 1;
    std::string extra = "0 %";
    std::vector<std::string> days; ///< "2026-09-14", one for each section, or none
};

/// \throws CallError numbers below 1, an extra that is no percentage, days that are none or out of order, or
/// not as many as sections
stock::ClassPlan class_plan(const ClassRequest& request);

} // namespace routeweigh
