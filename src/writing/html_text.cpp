// SPDX-License-Identifier: MIT
#include "writing/html_text.hpp"

#include "writing/escape.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::writing {
namespace {

/// Letters, digits and . _ - / only, below the folder of the document: nothing that could be another scheme
/// or place.
bool is_plain_path(std::string_view path) {
    return !path.empty() && path.front() != '/' && path.find("..") == std::string_view::npos &&
           std::all_of(path.begin(), path.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                      c == '.' || c == '_' || c == '-' || c == '/';
           });
}

} // namespace

std::string html_words(std::string_view text) {
    std::string html = html_escape(text);
    const std::string line = "<span class=\"blank\">" + std::string(blank) + "</span>";
    for (std::size_t at = html.find(blank); at != std::string::npos; at = html.find(blank, at + line.size()))
        html.replace(at, blank.size(), line);
    return html;
}

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
        std::string piece = html_words(run.text);
        switch (run.tone) {
        case Tone::plain:
            break;
        case Tone::strong:
            piece = "<strong>" + piece + "</strong>";
            break;
        case Tone::code:
            piece = "<code>" + piece + "</code>";
            break;
        case Tone::file:
            if (is_plain_path(run.text)) piece = "<a href=\"" + piece + "\">" + piece + "</a>";
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
