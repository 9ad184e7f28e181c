// SPDX-License-Identifier: MIT
// GHS hazard statements compared by their number, for the suffix letters (H350i, H360FD) do not change a
// level.
#pragma once

#include <cstddef>
#include <string_view>

namespace routeweigh {

// 360 for "H360FD"; 0 for a text that is no hazard statement, such as the supplemental "EUH066".
constexpr int statement_number(std::string_view statement) {
    if (statement.size() < 4 || statement[0] != 'H') return 0;
    int number = 0;
    for (std::size_t i = 1; i < 4; ++i) {
        if (statement[i] < '0' || statement[i] > '9') return 0;
        number = 10 * number + (statement[i] - '0');
    }
    return number;
}

} // namespace routeweigh
