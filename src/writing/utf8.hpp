// SPDX-License-Identifier: MIT
// Reads UTF-8 one code point at a time and measures text in terminal columns.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace routeweigh::writing {

struct CodePoint {
    char32_t value = 0;
    std::size_t bytes = 1; ///< how far to go on; 1 for a byte that starts nothing valid
    bool valid = false;
};

CodePoint decode(std::string_view text, std::size_t at);

/// Columns that the text takes in a terminal: combining marks take none, wide East Asian characters two.
int display_width(std::string_view text);

/// The longest beginning of the text that fits into the width; at least one character.
std::string_view fitting_prefix(std::string_view text, int width);

std::string pad_right(std::string_view text, int width);
std::string pad_left(std::string_view text, int width);

} // namespace routeweigh::writing
