// SPDX-License-Identifier: MIT
#include "input/locate.hpp"
#include "input/skim.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <random>
#include <string>
#include <vector>

using namespace routeweigh;

namespace {

// The text from the place on which the pointer lands; "none" where it leads nowhere.
std::string landing(const std::string& text, const std::string& pointer, std::size_t length) {
    const auto offset = locate(text, pointer);
    return offset ? text.substr(*offset, length) : "none";
}

} // namespace

TEST_CASE("a pointer finds its value through nested arrays and objects") {
    const std::string text = R"({
  "steps": [
    {"title": "a [ { \" , ] }", "charges": [[], [1, [2, 3], {"m": "x"}]]},
    {"title": "b"}
  ],
  "last": -1.5e3
})";
    CHECK(landing(text, "", 1) == "{");
    CHECK(landing(text, "/steps/0/charges/1/1/1", 1) == "3");
    CHECK(landing(text, "/steps/0/charges/1/2/m", 3) == "\"x\"");
    CHECK(landing(text, "/steps/1/title", 3) == "\"b\"");
    CHECK(landing(text, "/last", 6) == "-1.5e3");
    CHECK(landing(text, "/steps/2", 1) == "none");
    CHECK(landing(text, "/steps/0/charges/0/0", 1) == "none");
    CHECK(landing(text, "/steps/00", 1) == "none");
    CHECK(landing(text, "/steps/x", 1) == "none");
    CHECK(landing(text, "/last/x", 1) == "none");
    CHECK(landing(text, "steps", 1) == "none");
}

// The document and pointers of RFC 6901, section 5 (from memory), with the values they must find.
TEST_CASE("the pointers of RFC 6901 find what that standard says") {
    const std::string text = R"({
      "foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4, "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8
   })";
    CHECK(landing(text, "/foo/0", 5) == "\"bar\"");
    CHECK(landing(text, "/", 1) == "0");
    CHECK(landing(text, "/a~1b", 1) == "1");
    CHECK(landing(text, "/c%d", 1) == "2");
    CHECK(landing(text, "/e^f", 1) == "3");
    CHECK(landing(text, "/g|h", 1) == "4");
    CHECK(landing(text, "/i\\j", 1) == "5");
    CHECK(landing(text, "/k\"l", 1) == "6");
    CHECK(landing(text, "/ ", 1) == "7");
    CHECK(landing(text, "/m~0n", 1) == "8");
}

TEST_CASE("keys are compared with their escapes resolved") {
    const std::string text = R"({"\u0061\u00e9\ud83e\uddea": 1, "tab\tkey": {"b": 2}})";
    CHECK(landing(text, "/a\u00e9\U0001F9EA", 1) == "1");
    CHECK(landing(text, "/tab\tkey/b", 1) == "2");
    CHECK(unescape("\\\"\\\\\\/\\b\\f\\n\\r\\t") == "\"\\/\b\f\n\r\t");
    CHECK(pointer_token("a/b~c") == "a~1b~0c");
}

TEST_CASE("the second of two equal keys is found") {
    const std::string text = R"({"a": {"x": 1, "y": {"x": 9}, "x" : 2}})";
    CHECK(text.substr(*locate_key(text, "/a", "x", 1), 7) == "\"x\" : 2");
    CHECK_FALSE(locate_key(text, "/a", "x", 2));
    CHECK_FALSE(locate_key(text, "/a/x", "x", 0));
}

TEST_CASE("a cut-off text leads nowhere and ends") {
    const std::string text = R"({"a": [1, {"b": "c"}, 2], "d": "e\"f"})";
    for (std::size_t length = 0; length < text.size(); ++length) {
        CAPTURE(length);
        const auto offset = locate(text.substr(0, length), "/d");
        CHECK((!offset || *offset < length));
    }
    CHECK(landing(text, "/d", 6) == "\"e\\\"f\"");
}

namespace {

// A random value with awkward keys and texts, not deeper than asked.
nlohmann::json random_value(std::mt19937& random, int depth) {
    static const std::vector<std::string> texts = {"",  "a",  "a/b", "m~n", "~1", "k\"l",   "\\",
                                                   "{", "],", ":",   "\n",  " ",  "\u00e9", "\U0001F9EA"};
    const auto pick = [&](std::size_t below) { return random() % below; };
    nlohmann::json value;
    switch (depth > 0 ? pick(6) : pick(4)) {
    case 0:
        return texts[pick(texts.size())];
    case 1:
        return static_cast<int>(pick(2000)) - 1000;
    case 2:
        return 0.25 * static_cast<double>(pick(100));
    case 3:
        return nullptr;
    case 4:
        value = nlohmann::json::array();
        for (std::size_t i = pick(4); i > 0; --i)
            value.push_back(random_value(random, depth - 1));
        return value;
    default:
        value = nlohmann::json::object();
        for (std::size_t i = pick(4); i > 0; --i)
            value[texts[pick(texts.size())]] = random_value(random, depth - 1);
        return value;
    }
}

// Checks the pointer of this value and those of all below it.
void check_located(const std::string& text, const nlohmann::json& value, const std::string& pointer) {
    CAPTURE(text);
    CAPTURE(pointer);
    const auto offset = locate(text, pointer);
    REQUIRE(offset);
    Skim skim(text, *offset);
    skim.skip_value();
    REQUIRE(skim.ok());
    CHECK(nlohmann::json::parse(text.substr(*offset, skim.offset() - *offset)) == value);
    if (value.is_array())
        for (std::size_t i = 0; i < value.size(); ++i)
            check_located(text, value[i], pointer + '/' + std::to_string(i));
    if (value.is_object())
        for (auto it = value.begin(); it != value.end(); ++it)
            check_located(text, it.value(), pointer + '/' + pointer_token(it.key()));
}

} // namespace

// The JSON library writes and reads the texts; it keeps no places, so that only the values can be compared.
TEST_CASE("every value of random documents is found where the JSON library says it is") {
    std::mt19937 random(7);
    for (int round = 0; round < 300; ++round) {
        const nlohmann::json value = random_value(random, 4);
        check_located(value.dump(round % 3 == 0 ? -1 : round % 3, ' ', round % 2 == 0), value, "");
    }
}
