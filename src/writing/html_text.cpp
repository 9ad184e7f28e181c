// SPDX-License-Identifier: MIT
#include "writing/html_text.hpp"

#include "writing/escape.hpp"

#include <fmt/format.h>

namespace routeweigh::writing {

std::string html_anchor(std::string_view anchor) {
    // Every byte that is not plain is written as its number, so that different anchors stay different.
    std::string id = "at-";
    for (const char c : anchor) {
        const bool letter =
            (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
        id += letter ? std::string(1, c) : fmt::format("_{:02x}", static_cast<unsigned char>(c));
    }
    return id;
}

std::string html_text(const Text& text) {
    std::string html;
    for (const Run& run : text.runs) {
        std::string piece = html_escape(run.text);
        switch (run.tone) {
        case Tone::plain:
            break;
        case Tone::strong:
            piece = "<strong>" + piece + "</strong>";
            break;
        case Tone::code:
            piece = "<code>" + piece + "</code>";
            break;
        case Tone::number:
            piece = "<span class=\"figure\">" + piece + "</span>";
            break;
        }
        if (!run.target.empty()) piece = "<a href=\"#" + html_anchor(run.target) + "\">" + piece + "</a>";
        html += piece;
    }
    return html;
}

} // namespace routeweigh::writing
