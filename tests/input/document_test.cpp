// SPDX-License-Identifier: MIT
#include "input/field.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace routeweigh;

namespace {

std::string refusal(const std::string& text) {
    try {
        Document::parse(Source{"x.json", text});
    } catch (const InputError& error) {
        return error.what();
    }
    return "";
}

} // namespace

TEST_CASE("broken JSON is explained at its line") {
    struct Row {
        std::string text;
        int line;
        const char* message;
    };
    const std::vector<Row> rows = {
        {"", 1, "the file is empty"},
        {" \n \n", 3, "the file is empty"},
        {"{\n\"a\": 1,\n// remark\n\"b\": 2}", 3, "JSON has no comments"},
        {"{\n\"a\": 1, /* remark */\n\"b\": 2}", 2, "JSON has no comments"},
        {"{\n# remark\n\"b\": 2}", 2, "JSON has no comments"},
        {"{\"a\": 1} // remark", 1, "JSON has no comments"},
        {"{\"a\": // remark\n 1}", 1, "JSON has no comments"},
        {"{\"a\": 1,\n}", 1, "a comma stands before the closing bracket"},
        {"[1,\n2,\n]", 2, "a comma stands before the closing bracket"},
        {"{\"a\": 1\n\"b\": 2}", 2, "a comma is missing before this"},
        {"[1 2]", 1, "a comma is missing before this"},
        {"{\"a\" 1}", 1, "a colon is missing"},
        {"{a: 1}", 1, "a key between double quotes is missing"},
        {"{'a': 1}", 1, "not single ones"},
        {"{\"a\": 'b'}", 1, "not single ones"},
        {"{\"a\": b}", 1, "text stands between double quotes"},
        {"{\"a\": NaN}", 1, "NaN is no number"},
        {"{\"a\": -Infinity}", 1, "-Infinity is no number"},
        {"{\"a\": True}", 1, "True is written true"},
        {"{\"a\": 1e400}", 1, "1e400 is too large"},
        {"{\"a\":\n-1e400}", 2, "-1e400 is too large"},
        {"{\"a\": .5}", 1, ".5 is no number"},
        {"{\"a\": +5}", 1, "+5 is no number"},
        {"{\"a\": 5.}", 1, "5. is no number"},
        {"{\"a\": }", 1, "a value is missing"},
        {"{\"a\": \"b\n\"}", 1, "a text must end on its line"},
        {"{\"a\": \"b\tc\"}", 1, "a control character"},
        {"{\"a\": \"C:\\data\"}", 1, "a backslash in a text"},
        {"{\"a\": \"b}", 1, "not closed by a double quote"},
        {"{\n\"a\": [1,\n2\n", 4, "the bracket [ of line 2 is not closed"},
        {"{\"a\": 1}}", 1, "something stands behind the end"},
        {"{\"a\": 1}\n{\"a\": 1}", 2, "something stands behind the end"},
        {"{\"a\": [1}", 1, "the bracket } does not close the bracket [ of line 1"},
        {"{\"a\": 1]}", 1, "the bracket ] does not close the bracket { of line 1"},
        {"{\"a\": 01}", 1, "a number has no zeros in front"},
        {"{\"a\": \"\\ud83d\"}", 1, "half a character"},
        {std::string("{\0}", 3), 1, "a zero byte"},
        {std::string("{}\n\0rest", 8), 2, "a zero byte"},
        {"{\"a\": 1,, \"b\": 2}", 1, "a key between double quotes is missing"},
        {"{1: 2}", 1, "a key between double quotes is missing"},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string(row.text));
        const std::string message = refusal(row.text);
        CAPTURE(message);
        CHECK(message.rfind("x.json:" + std::to_string(row.line) + ": ", 0) == 0);
        CHECK(message.find(row.message) != std::string::npos);
    }
}

TEST_CASE("every cut of a document is refused, and none crashes") {
    const std::string text = R"({"a": [1, -2.5e3, true, null], "b\u00e9": {"c": "d\"e"}})";
    CHECK(refusal(text) == "");
    for (std::size_t length = 0; length < text.size(); ++length) {
        CAPTURE(length);
        CHECK(refusal(text.substr(0, length)) != "");
    }
}

TEST_CASE("keys that stand twice are refused at both places, however they are written") {
    CHECK(refusal("{\"a\": 1, \"b\": {\"a\": 1}}") == "");
    CHECK(refusal("{\n\"a\": 1,\n\"\\u0061\": 2}") ==
          "x.json:3 /a: the key \"a\" stands twice in one object; the other place: x.json:2 /a");
    CHECK(refusal("{\"s\": [0,\n{\"x/y\": {},\n\"x/y\": {}}]}") ==
          "x.json:3 /s/1/x~1y: the key \"x/y\" stands twice in one object; the other place: x.json:2 "
          "/s/1/x~1y");

    try {
        Document::parse(Source{"x.json", "{\"a\": 1,\n\"a\": 2,\n\"a\": 3,\n\"b\": 1, \"b\": 2}"});
        FAIL("not refused");
    } catch (const InputError& error) {
        REQUIRE(error.problems.size() == 3);
        CHECK(error.problems[0].place.line == 2);
        CHECK(error.problems[1].place.line == 3);
        CHECK(error.problems[2].place.line == 4);
    }
}

TEST_CASE("a part of a source is read with the places of the whole") {
    const SourcePtr source = make_source("x.json", "{\"list\": [\n{\"a\": 1},\n{\"a\": \"b\"}\n]}");
    const std::size_t begin = source->text.rfind('{');
    const Document document = Document::parse_part(source, begin, begin + 10, "/list/1");
    Problems problems;
    CHECK(document.root(problems)["a"].number() == 0.0);
    REQUIRE(problems.all.size() == 1);
    CHECK(format(problems.all[0]) == "x.json:3 /list/1/a: expected a number, found a text");
    CHECK_THROWS_WITH_AS(Document::parse_part(source, begin, begin + 5, "/list/1"),
                         "x.json:3 /list/1: the file ends too early: the bracket { of line 1 is not closed",
                         InputError);
}
