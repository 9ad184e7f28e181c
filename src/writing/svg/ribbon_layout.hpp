// SPDX-License-Identifier: MIT
// Places the bands and labels of a mass-flow picture; widths are masses times one scale for all steps.
#pragma once

#include "writing/chart.hpp"

#include <string>
#include <vector>

namespace routeweigh::writing {

/// One flow between its stub at the margin and the block of its step.
struct Band {
    double outer_top = 0; ///< at the margin
    double inner_top = 0; ///< at the block
    double width = 0;
    Ribbons::Kind kind = Ribbons::Kind::ordinary;
    std::vector<std::string> label;
    double label_top = 0;
};

struct RibbonPanel {
    double top = 0;
    std::vector<std::string> heading;
    double block_top = 0;
    double block_height = 0;
    double bottom = 0;
    std::vector<Band> inputs;
    std::vector<Band> outputs;
};

struct RibbonLayout {
    double scale = 0; ///< pixels per unit of mass
    double height = 0;
    std::vector<RibbonPanel> panels; ///< one for each step
};

/// Measures that the drawing shares with the layout.
namespace ribbon {
inline constexpr double heading_size = 12;
inline constexpr double line_height = 14;
inline constexpr double stub_width = 7;
inline constexpr double label_width(double picture) {
    return (picture < 500 ? 0.345 : 0.29) * picture;
}
inline constexpr double label_size(double picture) {
    return picture < 500 ? 10.5 : 11.5;
}
} // namespace ribbon

/// Labels of these are set bold.
inline bool is_strong(Ribbons::Kind kind) {
    return kind == Ribbons::Kind::product || kind == Ribbons::Kind::intermediate;
}

RibbonLayout layout_ribbons(const Ribbons& chart, double width);

} // namespace routeweigh::writing
