// SPDX-License-Identifier: MIT
#include "input/syntax_error.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace routeweigh {

namespace {

bool of_word(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' ||
           c == '+' || c == '-' || c == '.';
}

// Start of the word, number or string whose last read byte is at `last`.
std::size_t token_start(std::string_view text, std::size_t last) {
    if (text[last] == '"') {
        for (std::size_t i = last; i-- > 0;)
            if (text[i] == '"' && (i == 0 || text[i - 1] != '\\')) return i;
        return last;
    }
    while (last > 0 && of_word(text[last]) && of_word(text[last - 1]))
        --last;
    return last;
}

std::string_view word_at(std::string_view text, std::size_t offset) {
    std::size_t end = offset;
    while (end < text.size() && of_word(text[end]))
        ++end;
    return text.substr(offset, end - offset);
}

// Offset of the innermost bracket that is still open at the end, or the size.
std::size_t unclosed_bracket(std::string_view text) {
    std::vector<std::size_t> open;
    bool in_string = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (in_string) {
            if (c == '\\') ++i;
            in_string = c != '"';
        } else if (c == '"') {
            in_string = true;
        } else if (c == '{' || c == '[') {
            open.push_back(i);
        } else if ((c == '}' || c == ']') && !open.empty()) {
            open.pop_back();
        }
    }
    return open.empty() ? text.size() : open.back();
}

bool starts_number(char c) {
    return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.';
}

std::string about_word(std::string_view word) {
    const std::string folded = fold(word);
    if (folded == "nan" || folded == "inf" || folded == "infinity" || folded == "-infinity" ||
        folded == "-inf")
        return fmt::format("{} is no number that JSON knows", word);
    for (const std::string_view literal : {"true", "false", "null"})
        if (folded == literal) return fmt::format("{} is written {}", word, literal);
    if (!word.empty() && starts_number(word[0]))
        return fmt::format("{} is no number as JSON writes them", word);
    return "text stands between double quotes";
}

std::string about_end(std::string_view text) {
    if (trim(text).empty()) return "the file is empty";
    const std::size_t open = unclosed_bracket(text);
    if (open == text.size()) return "the file ends too early";
    const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(open), '\n');
    return fmt::format("the file ends too early: the bracket {} of line {} is not closed", text[open], line);
}

std::string about_closing(std::string_view text, std::size_t at) {
    const std::size_t open = unclosed_bracket(text.substr(0, at));
    if (open == at) return fmt::format("the bracket {} closes nothing that is open here", text[at]);
    const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(open), '\n');
    return fmt::format("the bracket {} does not close the bracket {} of line {}", text[at], text[open], line);
}

} // namespace

SyntaxError explain_syntax_error(std::string_view text, std::size_t read, std::string_view complaint) {
    const auto complains_of = [&](std::string_view part) {
        return complaint.find(part) != std::string_view::npos;
    };
    const std::size_t last = read == 0 ? 0 : read - 1;

    if (complains_of("missing closing quote")) {
        const std::size_t quote = std::min(text.rfind('"'), text.size());
        return {quote, "the text that begins here is not closed by a double quote"};
    }
    if (last >= text.size() || complains_of("unexpected end of input")) return {text.size(), about_end(text)};
    if (complains_of("control character")) {
        if (text[last] == '\n' || text[last] == '\r')
            return {last, "a text must end on its line; a double quote is missing"};
        return {last, "a control character stands in a text; write it as an escape such as \\t"};
    }
    if (complains_of("surrogate"))
        return {last,
                "an escape from \\ud800 to \\udfff is half a character; the other half must stand beside it"};
    if (complains_of("invalid string"))
        return {last, "a backslash in a text must begin an escape such as \\\" or \\\\"};
    // A number that breaks off is noticed one byte late.
    const bool late = complains_of("invalid number") && last > 0 && !of_word(text[last]);
    const std::size_t at = token_start(text, late ? last - 1 : last);
    if (complains_of("number overflow"))
        return {at, fmt::format("{} is too large a number", word_at(text, at))};

    const char c = text[at];
    const std::string_view before = trim(text.substr(0, at));
    const char behind = before.empty() ? '\0' : before.back();
    if (c == '/' || c == '#')
        return {at, "JSON has no comments; put the remark into a text of its own, such as \"notes\""};
    if (c == '\'') return {at, "text stands between double quotes, not single ones"};
    if (before.empty() && c != '{' && c != '[' && c != '"')
        return {at, "this is no JSON, which begins with a bracket {"};
    if (behind == ',' && (c == '}' || c == ']'))
        return {before.size() - 1, "a comma stands before the closing bracket"};
    if (complains_of("; expected end of input"))
        return {at, "something stands behind the end of the document"};
    if (complains_of("; expected ':'")) return {at, "a colon is missing behind the key"};
    if (complains_of("; expected '}'") || complains_of("; expected ']'")) {
        if (c == '}' || c == ']') return {at, about_closing(text, at)};
        if (word_at(text, at).starts_with('0')) return {at, "a number has no zeros in front"};
        return {at, "a comma is missing before this, or the closing bracket"};
    }
    if (complains_of("; expected string literal")) return {at, "a key between double quotes is missing here"};
    if (complains_of("invalid number") || complains_of("invalid literal"))
        return {at, about_word(word_at(text, at))};
    return {at, "a value is missing here"};
}

} // namespace routeweigh
