// SPDX-License-Identifier: MIT
#include "writing/escape.hpp"

#include "writing/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::writing {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD"; // U+FFFD

bool is_space(char32_t c) {
    return c == '\t' || c == '\n' || c == '\r' || c == 0x2028 || c == 0x2029;
}

bool is_control(char32_t c) {
    return c < 0x20 || (c >= 0x7F && c < 0xA0);
}

/// Marks that override or isolate the reading direction.
bool turns_direction(char32_t c) {
    return (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069) || c == 0x200E || c == 0x200F ||
           c == 0x061C;
}

/// Not allowed in XML, thus neither in inline SVG.
bool is_noncharacter(char32_t c) {
    return c == 0xFFFE || c == 0xFFFF;
}

} // namespace

std::string valid_utf8(std::string_view text) {
    // Nearly all text is ASCII.
    if (std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; }))
        return std::string(text);
    std::string result;
    result.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint next = decode(text, at);
        result += next.valid ? text.substr(at, next.bytes) : replacement;
        at += next.bytes;
    }
    return result;
}

std::string clean(std::string_view text) {
    std::string result;
    result.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint next = decode(text, at);
        const bool harmless = next.valid && !is_control(next.value) && !turns_direction(next.value) &&
                              !is_noncharacter(next.value);
        if (next.valid && is_space(next.value)) {
            result += ' ';
        } else {
            result += harmless ? text.substr(at, next.bytes) : replacement;
        }
        at += next.bytes;
    }
    return result;
}

std::string html_escape(std::string_view text) {
    std::string result;
    for (const char c : clean(text)) {
        switch (c) {
        case '&':
            result += "&amp;";
            break;
        case '<':
            result += "&lt;";
            break;
        case '>':
            result += "&gt;";
            break;
        case '"':
            result += "&quot;";
            break;
        case '\'':
            result += "&#39;";
            break;
        default:
            result += c;
        }
    }
    return result;
}

std::string markdown_escape(std::string_view text) {
    static constexpr std::string_view special = "\\`*_[]|~#$!";
    const std::string line = clean(text);
    std::string result;
    for (const char c : line) {
        if (c == '<') {
            result += "&lt;";
        } else if (c == '>') {
            result += "&gt;";
        } else if (c == '&') {
            result += "&amp;";
        } else {
            if (special.find(c) != std::string_view::npos) result += '\\';
            result += c;
        }
    }
    // A list mark, a rule or a heading underline counts only where a line begins; leading spaces make code.
    const auto first = result.find_first_not_of(' ');
    if (first == std::string::npos) return result.empty() ? result : " ";
    result.erase(0, first);
    const auto after_digits = result.find_first_not_of("0123456789");
    if (result[0] == '-' || result[0] == '+' || result[0] == '=') {
        result.insert(0, 1, '\\');
    } else if (after_digits != 0 && after_digits != std::string::npos &&
               (result[after_digits] == '.' || result[after_digits] == ')') &&
               (after_digits + 1 == result.size() || result[after_digits + 1] == ' ')) {
        result.insert(after_digits, 1, '\\');
    }
    return std::string(first, ' ').substr(0, 1) + result;
}

std::string markdown_code(std::string_view text, bool in_table) {
    std::string line = clean(text);
    if (line.find_first_not_of(' ') == std::string::npos) return {};
    std::size_t longest = 0;
    std::size_t run = 0;
    for (const char c : line) {
        run = c == '`' ? run + 1 : 0;
        longest = std::max(longest, run);
    }
    if (in_table) {
        // A table is cut at pipes before code spans are read, so they need their backslash even here.
        std::string escaped;
        for (const char c : line) {
            if (c == '|') escaped += '\\';
            escaped += c;
        }
        line = std::move(escaped);
    }
    const std::string fence(longest + 1, '`');
    const bool needs_space = line.front() == '`' || line.back() == '`';
    const std::string gap = needs_space ? " " : "";
    return fence + gap + line + gap + fence;
}

std::string csv_text(std::string_view text) {
    std::string field = valid_utf8(text);
    if (!field.empty() && std::string_view("=+-@\t\r").find(field.front()) != std::string_view::npos) {
        field.insert(0, 1, '\'');
    }
    if (field.find_first_of(",\"\r\n") == std::string::npos) return field;
    std::string quoted = "\"";
    for (const char c : field) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

namespace {

/// \param valid  UTF-8
void append_escaped(std::string& to, std::string_view valid) {
    for (const char c : valid) {
        if (c == '"' || c == '\\')
            (to += '\\') += c;
        else if (c == '\n')
            to += "\\n";
        else if (c == '\t')
            to += "\\t";
        else if (static_cast<unsigned char>(c) < 0x20)
            to += fmt::format("\\u{:04x}", static_cast<unsigned>(c));
        else
            to += c;
    }
}

} // namespace

void append_json_text(std::string& to, std::string_view text) {
    // Nearly all text goes out as it is.
    const bool plain = std::all_of(text.begin(), text.end(),
                                   [](char c) { return c >= 0x20 && c < 0x7F && c != '"' && c != '\\'; });
    to += '"';
    if (plain)
        to += text;
    else
        append_escaped(to, valid_utf8(text));
    to += '"';
}

std::string json_text(std::string_view text) {
    std::string quoted;
    append_json_text(quoted, text);
    return quoted;
}

} // namespace routeweigh::writing
