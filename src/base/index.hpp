// SPDX-License-Identifier: MIT
// Row numbers are plain ints in our data, where -1 may mean "none"; containers want std::size_t.
#pragma once

#include <cstddef>

namespace routeweigh {

constexpr std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

} // namespace routeweigh
