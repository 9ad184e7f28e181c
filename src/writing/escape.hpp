// SPDX-License-Identifier: MIT
// Makes any text harmless in each output format.
//
// Names come from files that anybody may have written: a route may be called "<script>" and a charge "=1+1".
#pragma once

#include <string>
#include <string_view>

namespace routeweigh::writing {

/// Bytes that are no UTF-8 become U+FFFD, all else stays.
std::string valid_utf8(std::string_view text);

/// One line of valid UTF-8: line breaks and tabs become spaces, other control characters and the marks that
/// turn the reading direction become U+FFFD, so that no name can move a cursor or rearrange the words around
/// it.
std::string clean(std::string_view text);

/// For HTML and SVG, in text and in quoted attributes alike.
std::string html_escape(std::string_view text);

/// For running Markdown text and table cells.
std::string markdown_escape(std::string_view text);

/// A Markdown code span that holds the text as it stands, backticks and pipes included.
std::string markdown_code(std::string_view text, bool in_table);

/// A CSV field by RFC 4180, quoted when needed. Text that a spreadsheet would take for a formula, because it
/// starts with = + - @ tab or carriage return, gets an apostrophe in front.
std::string csv_text(std::string_view text);

/// A JSON string by RFC 8259, quotes included; bytes that are no UTF-8 become U+FFFD.
std::string json_text(std::string_view text);
void append_json_text(std::string& to, std::string_view text);

} // namespace routeweigh::writing
