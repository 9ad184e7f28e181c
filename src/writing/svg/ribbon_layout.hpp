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

/// Measures of the picture that the drawing shares with its layout.
namespace ribbon {
inline constexpr double label_width = 196;
inline constexpr double label_size = 11.5;
inline constexpr double line_height = 14;
inline constexpr double stub_width = 7;
} // namespace ribbon

RibbonLayout layout_ribbons(const Ribbons& chart);

} // namespace routeweigh::writing
