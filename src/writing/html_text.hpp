// SPDX-License-Identifier: MIT
// Running text, anchors and tables as HTML.
#pragma once

#include "writing/blocks.hpp"

#include <string>
#include <string_view>

namespace routeweigh::writing {

std::string html_text(const Text& text);

/// Escaped, with room where a hand is to write.
std::string html_words(std::string_view text);

/// An id that no other part of the page uses, made of letters, digits and hyphens.
std::string html_anchor(std::string_view anchor);

/// The table in its own scrolling box with remarks and notes below. `id` names the box; `caption` is HTML.
std::string html_table(const Table& table, std::string_view id, std::string_view caption);

} // namespace routeweigh::writing
