// SPDX-License-Identifier: MIT
// JSON: our reader accepts what the JSON library accepts, save what we refuse on purpose, and finds every
// value.
#include "fuzz_driver.hpp"

#include "input/field.hpp"
#include "input/locate.hpp"
#include "input/skim.hpp"

#include <nlohmann/json.hpp>

#include <set>
#include <string>
#include <vector>

namespace {

using namespace routeweigh;
using nlohmann::json;

/// The value as the library reads it, and whether a key stands twice in one object.
// NOLINTNEXTLINE(bugprone-exception-escape): moving a value of the library allocates nothing
struct Reference {
    json value;
    bool accepted = false, twice = false;
};

Reference reference(std::string_view text) {
    Reference result;
    std::vector<std::set<std::string>> keys;
    const auto watch = [&](int, json::parse_event_t event, json& parsed) {
        if (event == json::parse_event_t::object_start) keys.emplace_back();
        if (event == json::parse_event_t::object_end) keys.pop_back();
        if (event == json::parse_event_t::key)
            result.twice = !keys.back().insert(parsed.get<std::string>()).second || result.twice;
        return true;
    };
    result.value = json::parse(text.begin(), text.end(), watch, false);
    result.accepted = !result.value.is_discarded();
    return result;
}

void find_everything(std::string_view text, const json& value, const std::string& pointer) {
    const auto offset = locate(text, pointer);
    fuzz::require(offset.has_value(), "a value is not found");
    Skim skim(text, *offset);
    skim.skip_value();
    fuzz::require(skim.ok(), "the value at the place does not end");
    const std::string_view part = text.substr(*offset, skim.offset() - *offset);
    fuzz::require(json::parse(part.begin(), part.end(), nullptr, false) == value,
                  "another value stands at the place");
    if (value.is_object())
        for (const auto& [key, member] : value.items())
            find_everything(text, member, pointer + '/' + pointer_token(key));
    if (value.is_array())
        for (std::size_t i = 0; i < value.size(); ++i)
            find_everything(text, value[i], pointer + '/' + std::to_string(i));
}

void ask_for_everything(const Field& field, int depth) {
    (void)field.place();
    if (field.is_object())
        for (const std::string& key : field.keys())
            ask_for_everything(field[key], depth + 1);
    else if (field.is_array())
        for (const Field& item : field.items())
            ask_for_everything(item, depth + 1);
    (void)field.text();
    (void)field.number();
    (void)field.mass();
    field.problem("asked");
    if (depth % 2 == 0) field.close();
}

} // namespace

bool fuzz::try_input(std::string_view input) {
    const Reference expected = reference(input);
    try {
        const Document document = Document::parse({"x.json", std::string(input)});
        require(expected.accepted, "accepted what is no JSON");
        require(!expected.twice, "accepted a key that stands twice");
        find_everything(input, expected.value, "");
        Problems problems;
        ask_for_everything(document.root(problems), 0);
        for (const Problem& problem : problems.all)
            require(!format(problem).empty() && problem.place.line > 0, "a problem without a place");
        return true;
    } catch (const InputError& error) {
        require(!error.problems.empty() && !error.problems.front().message.empty(), "refused without a word");
        const std::string& message = error.problems.front().message;
        const bool on_purpose = expected.twice || message.find("nest deeper") != std::string::npos ||
                                message.find("UTF-") != std::string::npos ||
                                message.find("zero byte") != std::string::npos;
        require(!expected.accepted || on_purpose, "refused what is JSON");
        require(!format(error.problems.front()).empty(), "no message");
        (void)format_excerpt(error.problems.front().place);
        return false;
    }
}
