// SPDX-License-Identifier: MIT
// The style sheet of HTML documents, for screen, phone and paper.
#pragma once

#include <string_view>

namespace routeweigh::writing {

extern const std::string_view html_style;

} // namespace routeweigh::writing
