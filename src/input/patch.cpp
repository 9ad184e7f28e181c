// SPDX-License-Identifier: MIT
#include "input/patch.hpp"

#include "base/text.hpp"
#include "input/locate.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include <algorithm>

namespace routeweigh {
namespace {

using Json = nlohmann::ordered_json; // keys keep their order

constexpr std::size_t line_width = 116;

std::string words(const Json& value) {
    if (value.is_string()) return "a text";
    if (value.is_number()) return "a number";
    if (value.is_boolean()) return "true or false";
    return "null";
}

/// What stands on a line of its own where it fits, as people write such files.
void lay_out(const Json& value, std::size_t indent, std::size_t used, std::string& text);

std::string one_line(const Json& value) {
    if (!value.is_structured()) return value.dump();
    const bool object = value.is_object();
    std::string text(1, object ? '{' : '[');
    for (const auto& [key, item] : value.items()) {
        if (text.size() > 1) text += ", ";
        if (object) text += Json(key).dump() + ": ";
        text += one_line(item);
    }
    return text + (object ? '}' : ']');
}

void lay_out(const Json& value, std::size_t indent, std::size_t used, std::string& text) {
    const std::string line = one_line(value);
    if (!value.is_structured() || value.empty() || (indent > 0 && used + line.size() <= line_width)) {
        text += line;
        return;
    }
    const bool object = value.is_object();
    const std::string margin(indent + 2, ' ');
    text += object ? '{' : '[';
    bool first = true;
    for (const auto& [key, item] : value.items()) {
        text += first ? "\n" : ",\n";
        first = false;
        const std::string head = margin + (object ? Json(key).dump() + ": " : "");
        text += head;
        lay_out(item, indent + 2, head.size() + 1, text);
    }
    text += '\n' + std::string(indent, ' ') + (object ? '}' : ']');
}

std::string laid_out(const Json& value) {
    std::string text;
    lay_out(value, 0, 0, text);
    return text + '\n';
}

std::vector<std::string> tokens_of(const std::string& pointer) {
    if (!pointer.empty() && pointer.front() != '/')
        throw PointerError(fmt::format("a JSON pointer starts with \"/\", unlike \"{}\"", pointer),
                           "/" + pointer);
    std::vector<std::string> tokens;
    for (std::size_t begin = 1; begin <= pointer.size();) {
        const std::size_t end = std::min(pointer.find('/', begin), pointer.size());
        std::string token;
        for (std::size_t i = begin; i < end; ++i) {
            if (pointer[i] != '~') {
                token += pointer[i];
                continue;
            }
            const char next = i + 1 < end ? pointer[i + 1] : ' ';
            if (next != '0' && next != '1')
                throw PointerError(fmt::format(
                    "in the pointer \"{}\" a \"~\" is written \"~0\" and a \"/\" within a name \"~1\"",
                    pointer));
            token += next == '0' ? '~' : '/';
            ++i;
        }
        tokens.push_back(std::move(token));
        begin = end + 1;
    }
    return tokens;
}

std::vector<std::string> keys_of(const Json& object) {
    std::vector<std::string> keys;
    for (const auto& item : object.items())
        keys.push_back(item.key());
    return keys;
}

[[noreturn]] void refuse_key(const Json& object, const std::string& at, const std::string& key) {
    const std::string near = nearest(key, keys_of(object));
    throw PointerError(
        fmt::format("there is no \"{}\" at \"{}\"; there are: {}", key, at, join(keys_of(object), ", ")),
        near.empty() ? std::string() : at + '/' + pointer_token(near));
}

/// The index that a token names; the size of the list where it may be appended to.
std::size_t index_of_element(const Json& list, const std::string& at, const std::string& token, bool append) {
    if (append && token == "-") return list.size();
    const bool digits =
        !token.empty() && token.size() < 10 &&
        std::all_of(token.begin(), token.end(), [](char c) { return c >= '0' && c <= '9'; }) &&
        (token == "0" || token.front() != '0');
    const std::size_t index = digits ? std::stoul(token) : list.size();
    if (index < list.size()) return index;
    if (list.empty()) throw PointerError(fmt::format("the list at \"{}\" is empty", at));
    throw PointerError(
        fmt::format("the list at \"{}\" has elements 0 to {}, not \"{}\"", at, list.size() - 1, token),
        fmt::format("{}/{}", at, list.size() - 1));
}

/// The object or list that holds the last step of a pointer.
Json& holder(Json& root, const std::string& pointer, const std::vector<std::string>& tokens) {
    if (tokens.empty()) throw PointerError("the pointer \"\" is the whole file; name a place in it");
    Json* value = &root;
    std::string at;
    for (std::size_t i = 0;; ++i) {
        if (!value->is_structured())
            throw PointerError(fmt::format("\"{}\" is {} ({}), and \"{}\" leads into it", at, words(*value),
                                           value->dump(), pointer),
                               at);
        if (i + 1 == tokens.size()) return *value;
        if (value->is_array()) {
            value = &(*value)[index_of_element(*value, at, tokens[i], false)];
        } else {
            const auto member = value->find(tokens[i]);
            if (member == value->end()) refuse_key(*value, at, tokens[i]);
            value = &*member;
        }
        at += '/' + pointer_token(tokens[i]);
    }
}

std::string before_last(const std::string& pointer) {
    return pointer.substr(0, pointer.rfind('/'));
}

void put(Json& place, const std::string& at, const std::string& token, Json value) {
    if (place.is_object()) {
        place[token] = std::move(value);
        return;
    }
    const std::size_t index = index_of_element(place, at, token, true);
    if (index == place.size())
        place.push_back(std::move(value));
    else
        place[index] = std::move(value);
}

void take_out(Json& place, const std::string& at, const std::string& token) {
    if (place.is_array())
        place.erase(index_of_element(place, at, token, false));
    else if (place.erase(token) == 0)
        refuse_key(place, at, token);
}

} // namespace

std::string assign(std::string_view text, const std::vector<Assignment>& assignments) {
    Json root = Json::parse(text);
    for (const Assignment& assignment : assignments) {
        const auto tokens = tokens_of(assignment.pointer);
        Json& place = holder(root, assignment.pointer, tokens);
        const std::string& last = tokens.back();
        const std::string at = before_last(assignment.pointer);
        if (assignment.value.empty())
            take_out(place, at, last);
        else
            put(place, at, last, Json::parse(assignment.value));
    }
    return laid_out(root);
}

std::string merge_patch(std::string_view text, std::string_view patch) {
    Json root = Json::parse(text);
    root.merge_patch(Json::parse(patch));
    return laid_out(root);
}

std::vector<Difference> differences(std::string_view before, std::string_view after,
                                    const std::vector<std::string>& without) {
    // The order of keys is no difference, hence the kind of value that sorts them.
    using Sorted = nlohmann::json;
    Sorted first = Sorted::parse(before), second = Sorted::parse(after);
    for (const std::string& key : without)
        for (Sorted* side : {&first, &second})
            if (side->is_object()) side->erase(key);
    std::vector<Difference> found;
    Sorted now = first;
    for (const Sorted& step : Sorted::diff(first, second)) {
        std::string pointer = step.at("path");
        if (pointer.ends_with("/-")) { // behind the last of a list: named by the place it gets
            pointer.pop_back();
            pointer += std::to_string(now.at(Sorted::json_pointer(before_last(pointer))).size());
        }
        Difference difference{pointer, "", ""};
        const Sorted::json_pointer place(pointer);
        if (step.at("op") != "add") difference.before = now.at(place).dump();
        if (step.at("op") != "remove") difference.after = step.at("value").dump();
        now = now.patch(Sorted::array({step}));
        found.push_back(std::move(difference));
    }
    return found;
}

std::string json_value(std::string_view word) {
    return Json::accept(word) ? std::string(word) : json_text(word);
}

std::string json_text(std::string_view text) {
    return Json(std::string(text)).dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string plain_value(const std::string& value) {
    const Json json = Json::parse(value, nullptr, false);
    return json.is_string() ? json.get<std::string>() : value;
}

} // namespace routeweigh
