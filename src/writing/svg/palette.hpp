// SPDX-License-Identifier: MIT
// The few colours of all pictures: one blue from dark to light for magnitude, one rust accent for the
// baseline.
//
// Light and dark steps differ enough in lightness to be told apart in grey print and by colour-blind readers,
// and every step carries either white or ink lettering at a contrast of 4.5:1 or more.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

namespace routeweigh::writing::palette {

inline constexpr std::string_view ink = "#1c2630";
inline constexpr std::string_view quiet = "#525e6b";
inline constexpr std::string_view rule = "#c8d0d8";
inline constexpr std::string_view paper = "#ffffff";
inline constexpr std::string_view accent = "#9c4309";

inline constexpr std::array<std::string_view, 6> blues = {"#163a5f", "#2c5f8f", "#6a9ac4",
                                                          "#98b9d7", "#c3d8e9", "#e5eef6"};

/// Lettering on a step: white on the two dark ones, ink on the rest.
inline constexpr std::string_view lettering_on(std::size_t step) {
    return step < 2 ? paper : ink;
}

/// Steps for a number of parts that lie side by side, dark first and as far apart as they can be.
inline std::vector<std::size_t> steps_for(std::size_t parts) {
    switch (parts) {
    case 0:
        return {};
    case 1:
        return {1};
    case 2:
        return {1, 4};
    case 3:
        return {0, 2, 4};
    case 4:
        return {0, 2, 3, 5};
    case 5:
        return {0, 2, 3, 4, 5};
    default:
        break;
    }
    // More parts than steps: alternating ends keep neighbours apart, and the printed figures tell them.
    std::vector<std::size_t> steps;
    for (std::size_t i = 0; i < parts; ++i)
        steps.push_back(parts == 6 ? i : (i % 2 == 0 ? i / 2 % 3 : 3 + i / 2 % 3));
    return steps;
}

} // namespace routeweigh::writing::palette
