// SPDX-License-Identifier: MIT
#include "writing/svg/draw.hpp"

#include <variant>

namespace routeweigh::writing {

Canvas draw_chart(const Chart& chart, const std::string& name, double width) {
    return std::visit([&](const auto& what) { return draw(what, name, width); }, chart);
}

} // namespace routeweigh::writing
