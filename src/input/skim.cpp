// SPDX-License-Identifier: MIT
#include "input/skim.hpp"

namespace routeweigh {

namespace {

bool is_space(char c) {
    return c == ' ' || c == '\n' || c == '\r' || c == '\t';
}

bool ends_bare_value(char c) {
    return is_space(c) || c == ',' || c == ']' || c == '}' || c == ':';
}

// The number of four hexadecimal digits, 0 where they are none.
unsigned hex4(std::string_view digits) {
    unsigned value = 0;
    for (const char c : digits.substr(0, 4)) {
        const unsigned digit = c >= '0' && c <= '9'   ? static_cast<unsigned>(c - '0')
                               : c >= 'a' && c <= 'f' ? static_cast<unsigned>(c - 'a' + 10)
                               : c >= 'A' && c <= 'F' ? static_cast<unsigned>(c - 'A' + 10)
                                                      : 0U;
        value = 16 * value + digit;
    }
    return value;
}

void append_utf8(std::string& text, unsigned code) {
    const auto put = [&](unsigned byte) { text += static_cast<char>(static_cast<unsigned char>(byte)); };
    if (code < 0x80) {
        put(code);
    } else if (code < 0x800) {
        put(0xC0U | code >> 6U);
        put(0x80U | (code & 0x3FU));
    } else if (code < 0x10000) {
        put(0xE0U | code >> 12U);
        put(0x80U | (code >> 6U & 0x3FU));
        put(0x80U | (code & 0x3FU));
    } else {
        put(0xF0U | code >> 18U);
        put(0x80U | (code >> 12U & 0x3FU));
        put(0x80U | (code >> 6U & 0x3FU));
        put(0x80U | (code & 0x3FU));
    }
}

} // namespace

char Skim::peek() {
    if (offset_ == 0 && text_.starts_with("\xEF\xBB\xBF")) offset_ = 3;
    while (offset_ < text_.size() && is_space(text_[offset_]))
        ++offset_;
    return ok_ && offset_ < text_.size() ? text_[offset_] : '\0';
}

bool Skim::take(char wanted) {
    if (peek() != wanted) return false;
    ++offset_;
    return true;
}

std::string_view Skim::raw_string() {
    if (!take('"')) {
        fail();
        return {};
    }
    const std::size_t start = offset_;
    for (;;) {
        // Quotes are rare and escapes rarer: leap to the next quote, then see whether it was escaped.
        const std::size_t quote = text_.find('"', offset_);
        if (quote == std::string_view::npos) {
            offset_ = text_.size();
            fail();
            return {};
        }
        std::size_t backslashes = 0;
        while (quote - backslashes > start && text_[quote - backslashes - 1] == '\\')
            ++backslashes;
        offset_ = quote + 1;
        if (backslashes % 2 == 0) return text_.substr(start, quote - start);
    }
}

void Skim::skip_value() {
    const char first = peek();
    if (first == '"') {
        raw_string();
    } else if (first == '{' || first == '[') {
        int depth = 0;
        while (ok_ && offset_ < text_.size()) {
            const char c = text_[offset_];
            if (c == '"') {
                raw_string();
                continue;
            }
            ++offset_;
            if (c == '{' || c == '[') ++depth;
            if ((c == '}' || c == ']') && --depth == 0) return;
        }
        fail();
    } else {
        const std::size_t start = offset_;
        while (offset_ < text_.size() && !ends_bare_value(text_[offset_]))
            ++offset_;
        if (offset_ == start) fail();
    }
}

bool Skim::open(char bracket) {
    if (!take(bracket)) {
        fail();
        return false;
    }
    at_start_ = true;
    return true;
}

bool Skim::next() {
    const char c = peek();
    const bool first = at_start_;
    at_start_ = false;
    if (c == '}' || c == ']') {
        ++offset_;
        return false;
    }
    if (!first && !take(',')) fail();
    return ok_ && peek() != '\0';
}

std::string_view Skim::key() {
    const std::string_view raw = raw_string();
    if (!take(':')) fail();
    return raw;
}

std::string unescape(std::string_view raw) {
    std::string result;
    result.reserve(raw.size());
    for (std::size_t i = 0; i < raw.size(); ++i) {
        if (raw[i] != '\\' || i + 1 == raw.size()) {
            result += raw[i];
            continue;
        }
        switch (const char c = raw[++i]) {
        case 'b':
            result += '\b';
            break;
        case 'f':
            result += '\f';
            break;
        case 'n':
            result += '\n';
            break;
        case 'r':
            result += '\r';
            break;
        case 't':
            result += '\t';
            break;
        case 'u': {
            unsigned code = hex4(raw.substr(i + 1));
            i += 4;
            // Two escapes make one character outside the basic plane.
            if (code >= 0xD800 && code < 0xDC00 && raw.substr(i + 1).starts_with("\\u")) {
                const unsigned low = hex4(raw.substr(i + 3));
                if (low >= 0xDC00 && low < 0xE000) {
                    code = 0x10000 + ((code - 0xD800) << 10U) + (low - 0xDC00);
                    i += 6;
                }
            }
            append_utf8(result, code);
            break;
        }
        default:
            result += c;
        }
    }
    return result;
}

} // namespace routeweigh
