// SPDX-License-Identifier: MIT
#include "input/source.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace routeweigh {

namespace {

bool continues(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

// Length of the UTF-8 character at the offset, 0 where there is none (RFC 3629: no overlong forms, no
// surrogates, nothing above U+10FFFF).
std::size_t utf8_length(std::string_view text, std::size_t offset) {
    const auto first = static_cast<unsigned char>(text[offset]);
    if (first < 0x80) return 1;
    const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
    if (first < 0xC2 || first > 0xF4 || offset + length > text.size()) return 0;
    for (std::size_t i = 1; i < length; ++i)
        if (!continues(text[offset + i])) return 0;
    const auto second = static_cast<unsigned char>(text[offset + 1]);
    const bool refused = (first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) ||
                         (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F);
    return refused ? 0 : length;
}

// Offset of the first byte that is no UTF-8, or the size.
std::size_t first_not_utf8(std::string_view text) {
    std::size_t offset = 0;
    while (offset < text.size()) {
        const std::size_t length = utf8_length(text, offset);
        if (length == 0) break;
        offset += length;
    }
    return offset;
}

// Offset of the bracket that nests too deep, or the size. Brackets in strings do not count.
std::size_t first_too_deep(std::string_view text) {
    int depth = 0;
    bool in_string = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (in_string) {
            if (c == '\\') ++i;
            in_string = c != '"';
        } else if (c == '"') {
            in_string = true;
        } else if (c == '[' || c == '{') {
            if (++depth > deepest_nesting) return i;
        } else if (c == ']' || c == '}') {
            --depth;
        }
    }
    return text.size();
}

} // namespace

SourcePtr make_source(std::string name, std::string text) {
    return std::make_shared<const Source>(Source{std::move(name), std::move(text)});
}

void check_source(const Source& source) {
    if (source.text.size() > largest_source) {
        Problem problem;
        problem.message = fmt::format("the file has {} bytes, at most {} (16 MB) are read",
                                      source.text.size(), largest_source);
        problem.place.source = source.name;
        throw InputError(std::move(problem));
    }
    if (source.text.starts_with("\xFF\xFE") || source.text.starts_with("\xFE\xFF")) {
        Problem problem;
        problem.message = "the file is UTF-16; save it in the encoding UTF-8";
        problem.place.source = source.name;
        throw InputError(std::move(problem));
    }
    if (const std::size_t bad = first_not_utf8(source.text); bad < source.text.size()) {
        Problem problem;
        problem.message = fmt::format("byte {:#04x} is not UTF-8; save the file in the encoding UTF-8",
                                      static_cast<unsigned char>(source.text[bad]));
        problem.place = place_at(source, bad);
        // The bytes of this line may not be printable.
        problem.place.excerpt.clear();
        problem.place.excerpt_column = 0;
        throw InputError(std::move(problem));
    }
    // The parser takes a zero byte for the end, and would read nothing of what comes behind it.
    if (const std::size_t zero = source.text.find('\0'); zero != std::string::npos) {
        Problem problem;
        problem.message = "a zero byte stands here, so the file is no text";
        problem.place = place_at(source, zero);
        throw InputError(std::move(problem));
    }
    if (const std::size_t deep = first_too_deep(source.text); deep < source.text.size()) {
        Problem problem;
        problem.message = fmt::format("brackets nest deeper than {}", deepest_nesting);
        problem.place = place_at(source, deep);
        throw InputError(std::move(problem));
    }
}

Place place_at(const Source& source, std::size_t offset, std::string pointer) {
    const std::string_view text = source.text;
    offset = std::min(offset, text.size());
    const std::string_view before = text.substr(0, offset);
    const std::size_t line_break = before.rfind('\n');
    const std::size_t start = line_break == std::string_view::npos ? 0 : line_break + 1;
    std::size_t end = std::min(text.find('\n', offset), text.size());
    if (end > start && text[end - 1] == '\r') --end;

    // Of a long line, the part around the place, cut between characters.
    constexpr std::size_t longest = 160;
    std::size_t from = start;
    std::size_t to = end;
    if (end - start > longest) {
        from = std::max(start, offset - std::min(offset, longest / 2));
        while (from > start && continues(text[from]))
            --from;
        to = std::min(end, from + longest);
        while (to < end && continues(text[to]))
            ++to;
    }
    Place place;
    place.source = source.name;
    place.pointer = std::move(pointer);
    place.line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
    place.column = 1 + static_cast<int>(offset - start);
    place.excerpt = std::string(text.substr(from, to > from ? to - from : 0));
    place.excerpt_column = 1 + static_cast<int>(offset - std::min(offset, from));
    return place;
}

} // namespace routeweigh
