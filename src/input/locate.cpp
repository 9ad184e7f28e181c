// SPDX-License-Identifier: MIT
#include "input/locate.hpp"

#include "input/skim.hpp"

#include <algorithm>

namespace routeweigh {

namespace {

bool same_key(std::string_view raw, std::string_view key) {
    return raw.find('\\') == std::string_view::npos ? raw == key : unescape(raw) == key;
}

std::string token_text(std::string_view token) {
    std::string result;
    for (std::size_t i = 0; i < token.size(); ++i) {
        if (token[i] == '~' && i + 1 < token.size())
            result += token[++i] == '1' ? '/' : '~';
        else
            result += token[i];
    }
    return result;
}

// An array index as RFC 6901 writes it.
std::optional<std::size_t> array_index(std::string_view token) {
    if (token.empty() || token.size() > 9 || (token[0] == '0' && token.size() > 1)) return std::nullopt;
    std::size_t index = 0;
    for (const char c : token) {
        if (c < '0' || c > '9') return std::nullopt;
        index = 10 * index + static_cast<std::size_t>(c - '0');
    }
    return index;
}

// Moves the cursor from a value to the member or element that the token names.
bool step_into(Skim& skim, std::string_view token) {
    if (skim.peek() == '{') {
        const std::string key = token_text(token);
        for (skim.open('{'); skim.next(); skim.skip_value())
            if (same_key(skim.key(), key)) return skim.ok();
    } else if (skim.peek() == '[') {
        const auto index = array_index(token);
        if (!index) return false;
        std::size_t i = 0;
        for (skim.open('['); skim.next(); skim.skip_value())
            if (i++ == *index) return skim.ok();
    }
    return false;
}

bool walk(Skim& skim, std::string_view pointer) {
    while (!pointer.empty()) {
        if (pointer[0] != '/') return false;
        const std::size_t end = std::min(pointer.find('/', 1), pointer.size());
        if (!step_into(skim, pointer.substr(1, end - 1))) return false;
        pointer.remove_prefix(end);
    }
    return skim.peek() != '\0';
}

} // namespace

std::optional<std::size_t> locate(std::string_view text, std::string_view pointer) {
    Skim skim(text);
    if (!walk(skim, pointer)) return std::nullopt;
    return skim.offset();
}

std::optional<std::size_t> locate_key(std::string_view text, std::string_view object_pointer,
                                      std::string_view key, int n) {
    Skim skim(text);
    if (!walk(skim, object_pointer) || !skim.open('{')) return std::nullopt;
    while (skim.next()) {
        skim.peek();
        const std::size_t at = skim.offset();
        if (same_key(skim.key(), key) && n-- == 0) return at;
        skim.skip_value();
    }
    return std::nullopt;
}

std::string pointer_token(std::string_view key) {
    std::string result;
    for (const char c : key) {
        if (c == '~')
            result += "~0";
        else if (c == '/')
            result += "~1";
        else
            result += c;
    }
    return result;
}

} // namespace routeweigh
