// SPDX-License-Identifier: MIT
// Draws each kind of chart on a canvas.
#pragma once

#include "writing/chart.hpp"
#include "writing/svg/canvas.hpp"

#include <string>

namespace routeweigh::writing {

/// Pictures are laid out for one of these widths in pixels and widen only when their contents need it.
inline constexpr double picture_width = 680;
inline constexpr double phone_width = 350;

/// Sizes of the letters of labels, and of figures and scales beside them.
inline constexpr double label_size = 12;
inline constexpr double small_size = 10.5;

/// On a narrow picture labels stand above what they name.
inline constexpr bool is_narrow(double width) {
    return width < 500;
}

Canvas draw(const StackedBars& chart, const std::string& name, double width = picture_width);
Canvas draw(const Ribbons& chart, const std::string& name, double width = picture_width);
Canvas draw(const DecadeGrid& chart, const std::string& name, double width = picture_width);
Canvas draw(const Intervals& given, const std::string& name, double width = picture_width);
Canvas draw(const Curve& chart, const std::string& name, double width = picture_width);
Canvas draw(const Dots& chart, const std::string& name, double width = picture_width);
Canvas draw(const Graph& chart, const std::string& name, double width = picture_width);

Canvas draw_chart(const Chart& chart, const std::string& name, double width = picture_width);

} // namespace routeweigh::writing
