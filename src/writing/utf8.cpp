// SPDX-License-Identifier: MIT
#include "writing/utf8.hpp"

#include <algorithm>

namespace routeweigh::writing {
namespace {

int columns_of(char32_t c) {
    const bool combining = (c >= 0x0300 && c <= 0x036F) || (c >= 0x1AB0 && c <= 0x1AFF) ||
                           (c >= 0x20D0 && c <= 0x20FF) || (c >= 0xFE00 && c <= 0xFE0F) || c == 0x200B ||
                           c == 0x200C || c == 0x200D || c == 0xFEFF;
    if (combining) return 0;
    const bool wide =
        (c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0xA4CF) || (c >= 0xAC00 && c <= 0xD7A3) ||
        (c >= 0xF900 && c <= 0xFAFF) || (c >= 0xFE30 && c <= 0xFE6F) || (c >= 0xFF00 && c <= 0xFF60) ||
        (c >= 0xFFE0 && c <= 0xFFE6) || (c >= 0x1F300 && c <= 0x1FAFF) || (c >= 0x20000 && c <= 0x3FFFD);
    return wide ? 2 : 1;
}

} // namespace

CodePoint decode(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
    const unsigned char first = byte(0);
    if (first < 0x80) return {first, 1, true};
    const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
    if (first < 0xC2 || first > 0xF4 || at + length > text.size()) return {};
    char32_t value = first & (0xFFU >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xC0U) != 0x80U) return {};
        value = (value << 6U) | (byte(i) & 0x3FU);
    }
    static constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
    const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
    if (value < least[length] || value > 0x10FFFF || surrogate) return {};
    return {value, length, true};
}

int display_width(std::string_view text) {
    int width = 0;
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint next = decode(text, at);
        width += next.valid ? columns_of(next.value) : 1;
        at += next.bytes;
    }
    return width;
}

std::string_view fitting_prefix(std::string_view text, int width) {
    int used = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        const CodePoint next = decode(text, at);
        used += next.valid ? columns_of(next.value) : 1;
        if (used > width && at > 0) break;
        at += next.bytes;
    }
    return text.substr(0, at);
}

std::string pad_right(std::string_view text, int width) {
    return std::string(text) +
           std::string(static_cast<std::size_t>(std::max(0, width - display_width(text))), ' ');
}

std::string pad_left(std::string_view text, int width) {
    return std::string(static_cast<std::size_t>(std::max(0, width - display_width(text))), ' ') +
           std::string(text);
}

} // namespace routeweigh::writing
