// SPDX-License-Identifier: MIT
#include "writing/reading_back.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>

namespace routeweigh::writing {
namespace {

[[noreturn]] void fail(const std::string& what, std::size_t at) {
    throw std::runtime_error(what + " at byte " + std::to_string(at));
}

std::string entity(std::string_view name, std::size_t at) {
    static const std::map<std::string_view, std::string> known = {
        {"amp", "&"}, {"lt", "<"}, {"gt", ">"}, {"quot", "\""}, {"#39", "'"}};
    const auto found = known.find(name);
    if (found == known.end()) fail("unknown entity " + std::string(name), at);
    return found->second;
}

std::string resolved(std::string_view text, std::size_t at) {
    std::string result;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '&') {
            result += text[i];
            continue;
        }
        const std::size_t end = text.find(';', i);
        if (end == std::string_view::npos) fail("bare &", at + i);
        result += entity(text.substr(i + 1, end - i - 1), at + i);
        i = end;
    }
    return result;
}

bool is_name(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
}

Tag read_tag(std::string_view text, std::size_t& at) {
    Tag tag;
    if (text[at] == '/') {
        tag.closes = true;
        ++at;
    }
    while (at < text.size() && is_name(text[at]))
        tag.name += text[at++];
    if (tag.name.empty()) fail("a tag without name", at);
    while (at < text.size() && text[at] != '>') {
        if (text[at] == ' ' || text[at] == '\n') {
            ++at;
        } else if (text.substr(at, 2) == "/>") {
            tag.empty = true;
            ++at;
        } else if (is_name(text[at])) {
            std::string name;
            while (at < text.size() && (is_name(text[at]) || text[at] == ':'))
                name += text[at++];
            std::string value;
            if (text.substr(at, 2) == "=\"") {
                const std::size_t end = text.find('"', at + 2);
                if (end == std::string_view::npos) fail("an open attribute", at);
                const std::string_view raw = text.substr(at + 2, end - at - 2);
                if (raw.find('<') != std::string_view::npos) fail("< in an attribute", at);
                value = resolved(raw, at);
                at = end + 1;
            } else if (name != "open") {
                fail("attribute " + name + " without value", at);
            }
            tag.attributes.emplace_back(name, value);
        } else {
            fail(std::string("stray character in a tag: ") + text[at], at);
        }
    }
    if (at >= text.size()) fail("an open tag", at);
    ++at;
    return tag;
}

} // namespace

std::vector<std::vector<std::string>> read_csv(std::string_view text) {
    std::vector<std::vector<std::string>> rows;
    std::size_t at = 0;
    while (at < text.size()) {
        auto& row = rows.emplace_back();
        while (true) {
            std::string field;
            if (at < text.size() && text[at] == '"') {
                ++at;
                while (true) {
                    if (at >= text.size()) fail("an open quote", at);
                    if (text[at] != '"') {
                        field += text[at++];
                    } else if (text.substr(at, 2) == "\"\"") {
                        field += '"';
                        at += 2;
                    } else {
                        ++at;
                        break;
                    }
                }
            } else {
                while (at < text.size() && text[at] != ',' && text[at] != '\r') {
                    if (text[at] == '"' || text[at] == '\n') fail("a bare quote or line feed", at);
                    field += text[at++];
                }
            }
            row.push_back(field);
            if (at < text.size() && text[at] == ',') {
                ++at;
                continue;
            }
            if (text.substr(at, 2) != "\r\n") fail("a row that does not end in CR LF", at);
            at += 2;
            break;
        }
    }
    return rows;
}

std::string Tag::attribute(std::string_view wanted) const {
    const auto found = std::find_if(attributes.begin(), attributes.end(),
                                    [&](const auto& pair) { return pair.first == wanted; });
    return found == attributes.end() ? std::string() : found->second;
}

Markup read_markup(std::string_view text) {
    static const std::vector<std::string> void_elements = {"meta", "br", "hr", "img", "link", "input"};
    Markup markup;
    std::vector<std::string> open;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t next = std::min(text.find('<', at), text.size());
        const bool raw = !open.empty() && open.back() == "style"; // style text is not markup
        markup.text += raw ? std::string() : resolved(text.substr(at, next - at), at);
        if (next == text.size()) break;
        at = next + 1;
        if (text.substr(at, 8) == "!DOCTYPE") {
            at = text.find('>', at) + 1;
            continue;
        }
        Tag tag = read_tag(text, at);
        if (tag.closes) {
            if (open.empty() || open.back() != tag.name) fail("</" + tag.name + "> closes nothing", at);
            open.pop_back();
        } else if (!tag.empty &&
                   std::find(void_elements.begin(), void_elements.end(), tag.name) == void_elements.end()) {
            open.push_back(tag.name);
        }
        markup.tags.push_back(std::move(tag));
    }
    if (!open.empty()) fail("<" + open.back() + "> is never closed", text.size());
    return markup;
}

} // namespace routeweigh::writing
