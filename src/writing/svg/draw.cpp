// SPDX-License-Identifier: MIT
#include "writing/svg/draw.hpp"

#include <variant>

namespace routeweigh::writing {

Canvas draw_chart(const Chart& chart, const std::string& name) {
    return std::visit([&](const auto& what) { return draw(what, name); }, chart);
}

} // namespace routeweigh::writing
