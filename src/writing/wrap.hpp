// SPDX-License-Identifier: MIT
// Breaks text into lines of a given number of terminal columns.
#pragma once

#include "writing/blocks.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::writing {

struct Word {
    std::string text;
    Tone tone = Tone::plain;
    bool space_before = false;
};

using Line = std::vector<Word>;

/// Breaks at spaces only; a figure with its unit is never broken. A word longer than a whole line is cut.
std::vector<Line> wrap(const Text& text, int width);

/// The same for bare text; always at least one line, which may be empty.
std::vector<std::string> wrap_plain(std::string_view text, int width);

/// The text with no-break spaces where it speaks of per cent, so that "7.6 %" and "10 % w/v" stay on one
/// line.
std::string hold_per_cent(std::string text);

/// The text without its tones.
std::string plain(const Text& text);

} // namespace routeweigh::writing
