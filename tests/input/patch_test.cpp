// SPDX-License-Identifier: MIT
#include "input/patch.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include <string>

using namespace routeweigh;

namespace {

/// Compared as values, so that the layout does not matter.
void check_same(const std::string& text, const std::string& expected) {
    CHECK(nlohmann::json::parse(text) == nlohmann::json::parse(expected));
}

std::string set(const std::string& text, const std::string& pointer, const std::string& value) {
    return assign(text, {{pointer, value}});
}

std::string refusal(const std::string& text, const std::string& pointer) {
    try {
        set(text, pointer, "1");
    } catch (const PointerError& error) {
        return std::string(error.what()) + " | " + error.nearest;
    }
    return "taken";
}

} // namespace

TEST_CASE("the pointers of RFC 6901, section 5, lead to the places it names") {
    // The document and the pointers are those of the RFC (remembered).
    const std::string text = R"({"foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4,
        "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8})";
    const nlohmann::json before = nlohmann::json::parse(text);
    for (const std::string pointer :
         {"/foo/0", "/", "/a~1b", "/c%d", "/e^f", "/g|h", "/i\\j", "/k\"l", "/ ", "/m~0n"}) {
        CAPTURE(pointer);
        const nlohmann::json after = nlohmann::json::parse(set(text, pointer, "\"here\""));
        nlohmann::json expected = before;
        expected.at(nlohmann::json::json_pointer(pointer)) = "here";
        CHECK(after == expected);
        CHECK(after != before);
    }
}

TEST_CASE("the examples of RFC 7396, appendix A, come out as it says") {
    // Remembered from the RFC.
    struct Example {
        const char *original, *patch, *result;
    };
    const Example examples[] = {
        {R"({"a":"b"})", R"({"a":"c"})", R"({"a":"c"})"},
        {R"({"a":"b"})", R"({"b":"c"})", R"({"a":"b","b":"c"})"},
        {R"({"a":"b"})", R"({"a":null})", R"({})"},
        {R"({"a":"b","b":"c"})", R"({"a":null})", R"({"b":"c"})"},
        {R"({"a":["b"]})", R"({"a":"c"})", R"({"a":"c"})"},
        {R"({"a":"c"})", R"({"a":["b"]})", R"({"a":["b"]})"},
        {R"({"a":{"b":"c"}})", R"({"a":{"b":"d","c":null}})", R"({"a":{"b":"d"}})"},
        {R"({"a":[{"b":"c"}]})", R"({"a":[1]})", R"({"a":[1]})"},
        {R"(["a","b"])", R"(["c","d"])", R"(["c","d"])"},
        {R"({"a":"b"})", R"(["c"])", R"(["c"])"},
        {R"({"a":"foo"})", R"(null)", R"(null)"},
        {R"({"a":"foo"})", R"("bar")", R"("bar")"},
        {R"({"e":null})", R"({"a":1})", R"({"e":null,"a":1})"},
        {R"([1,2])", R"({"a":"b","c":null})", R"({"a":"b"})"},
        {R"({})", R"({"a":{"bb":{"ccc":null}}})", R"({"a":{"bb":{}}})"},
    };
    for (const auto& example : examples) {
        CAPTURE(example.patch);
        check_same(merge_patch(example.original, example.patch), example.result);
    }
}

TEST_CASE("a member is added, a list is added to, and both lose what is taken out") {
    const std::string text = R"({"a": {"b": [1, 2]}})";
    check_same(set(text, "/a/c", "3"), R"({"a": {"b": [1, 2], "c": 3}})");
    check_same(set(text, "/a/b/-", "3"), R"({"a": {"b": [1, 2, 3]}})");
    check_same(set(text, "/a/b/0", ""), R"({"a": {"b": [2]}})");
    check_same(set(text, "/a/b", ""), R"({"a": {}})");
}

TEST_CASE("assignments are made in their order") {
    check_same(assign(R"({"a": 1})", {{"/a", "{}"}, {"/a/b", "[]"}, {"/a/b/-", "2"}}),
               R"({"a": {"b": [2]}})");
}

TEST_CASE("a pointer that leads nowhere is refused with the nearest that leads somewhere") {
    const std::string text = R"({"steps": [{"id": "one", "amount": "3 g"}]})";
    CHECK(refusal(text, "/stepps/0/id") == "there is no \"stepps\" at \"\"; there are: steps | /steps");
    CHECK(refusal(text, "/steps/7/id") == "the list at \"/steps\" has elements 0 to 0, not \"7\" | /steps/0");
    CHECK(refusal(text, "/steps/00") == "the list at \"/steps\" has elements 0 to 0, not \"00\" | /steps/0");
    CHECK(
        refusal(text, "/steps/0/amount/g") ==
        "\"/steps/0/amount\" is a text (\"3 g\"), and \"/steps/0/amount/g\" leads into it | /steps/0/amount");
    CHECK(refusal(text, "steps") == "a JSON pointer starts with \"/\", unlike \"steps\" | /steps");
    CHECK(refusal(text, "").starts_with("the pointer \"\" is the whole file"));
    CHECK(refusal(text, "/a~2b").starts_with("in the pointer \"/a~2b\" a \"~\" is written"));
    CHECK(refusal(R"({"a": []})", "/a/0") == "the list at \"/a\" is empty | ");
}

TEST_CASE("differences name the place with the value before and after") {
    const auto found = differences(R"({"id": "x", "a": {"b": 1, "c": "2 g"}})",
                                   R"({"id": "y", "a": {"c": "3 g", "d": [1]}})", {"id"});
    REQUIRE(found.size() == 3);
    for (const Difference& difference : found) {
        if (difference.pointer == "/a/b") CHECK((difference.before == "1" && difference.after.empty()));
        if (difference.pointer == "/a/c")
            CHECK((difference.before == "\"2 g\"" && difference.after == "\"3 g\""));
        if (difference.pointer == "/a/d") CHECK((difference.before.empty() && difference.after == "[1]"));
    }
    // What is put behind the last of a list is named by the place that it gets.
    const auto behind = differences(R"({"a": [1]})", R"({"a": [1, 2, 3]})", {});
    REQUIRE(behind.size() == 2);
    CHECK(behind[0].pointer == "/a/1");
    CHECK(behind[1].pointer == "/a/2");
    CHECK(behind[1].after == "3");
    // The order of keys is no difference.
    CHECK(differences(R"({"a": 1, "b": 2})", R"({"b": 2, "a": 1})", {}).empty());
}

TEST_CASE("a word of the command line is JSON where it is JSON, else a text") {
    CHECK(json_value("5") == "5");
    CHECK(json_value("true") == "true");
    CHECK(json_value("{\"a\": 1}") == "{\"a\": 1}");
    CHECK(json_value("3 g") == "\"3 g\"");
    CHECK(json_value("\"3 g\"") == "\"3 g\"");
    CHECK(json_value("") == "\"\"");
    CHECK(json_value("a \"b\"") == "\"a \\\"b\\\"\"");
}

TEST_CASE("what comes out keeps its keys in order and stands on short lines") {
    const std::string text = set(R"({"z": 1, "a": {"y": [1, 2], "b": "c"}})", "/z", "2");
    CHECK(text == "{\n  \"z\": 2,\n  \"a\": {\"y\": [1, 2], \"b\": \"c\"}\n}\n");
}
