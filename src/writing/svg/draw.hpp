// SPDX-License-Identifier: MIT
// Draws each kind of chart on a canvas.
#pragma once

#include "writing/chart.hpp"
#include "writing/svg/canvas.hpp"

#include <string>

namespace routeweigh::writing {

/// Pictures are laid out for this width in pixels and widen only when their contents need it.
inline constexpr double picture_width = 680;

Canvas draw(const StackedBars& chart, const std::string& name);
Canvas draw(const Ribbons& chart, const std::string& name);
Canvas draw(const DecadeGrid& chart, const std::string& name);
Canvas draw(const Intervals& chart, const std::string& name);
Canvas draw(const Curve& chart, const std::string& name);
Canvas draw(const Graph& chart, const std::string& name);

Canvas draw_chart(const Chart& chart, const std::string& name);

} // namespace routeweigh::writing
