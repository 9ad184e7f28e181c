// SPDX-License-Identifier: MIT
// The style sheet of HTML documents, for screen, phone and paper.
#pragma once

#include <string_view>

namespace routeweigh::writing {

extern const std::string_view html_style;

/// Added for a document that is meant for one sheet of paper: it is printed closer.
extern const std::string_view html_single_page_style;

} // namespace routeweigh::writing
