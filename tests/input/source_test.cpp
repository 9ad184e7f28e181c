// SPDX-License-Identifier: MIT
#include "input/field.hpp"
#include "input/source.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace routeweigh;

namespace {

// The one problem for which the text is refused; "" for a text that is taken.
std::string refusal_of(std::string text) {
    try {
        Document::parse(Source{"x.json", std::move(text)});
    } catch (const InputError& error) {
        REQUIRE(error.problems.size() == 1);
        return format(error.problems[0]);
    }
    return "";
}

bool starts(const std::string& text, const std::string& beginning) {
    return text.rfind(beginning, 0) == 0;
}

} // namespace

TEST_CASE("a text above 16 MB is refused before it is parsed") {
    CHECK(refusal_of('"' + std::string(largest_source - 2, 'a') + '"') == "");
    const std::string message = refusal_of(std::string(largest_source + 1, '{'));
    CHECK(message == "x.json: the file has 16777217 bytes, at most 16777216 (16 MB) are read");
}

TEST_CASE("nesting deeper than 64 is refused before it is parsed") {
    const auto nested = [](std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); };
    CHECK(refusal_of(nested(64)) == "");
    CHECK(refusal_of("\n" + nested(65)) == "x.json:2: brackets nest deeper than 64");
    CHECK(starts(refusal_of(std::string(1000000, '[')), "x.json:1: brackets nest"));
    // Brackets in a text are no nesting, whatever is escaped before them.
    CHECK(refusal_of("\"\\\\\\\"" + std::string(100, '[') + "\"") == "");
}

TEST_CASE("what is not UTF-8 is refused with its line") {
    CHECK(refusal_of("\"caf\xC3\xA9\"") == "");
    CHECK(refusal_of("\"\xF0\x9F\xA7\xAA\"") == "");
    CHECK(refusal_of("\xEF\xBB\xBF\"byte order mark\"") == "");
    CHECK(starts(refusal_of("[1,\n\"caf\xE9\"]"), "x.json:2: byte 0xe9 is not UTF-8"));
    CHECK(starts(refusal_of("\"\xC0\xAF\""), "x.json:1: byte 0xc0"));         // overlong form of a slash
    CHECK(starts(refusal_of("\"\xED\xA0\x80\""), "x.json:1: byte 0xed"));     // half of a surrogate pair
    CHECK(starts(refusal_of("\"\xF4\x90\x80\x80\""), "x.json:1: byte 0xf4")); // above the last character
    CHECK(starts(refusal_of("\"\xE2\x82"), "x.json:1: byte 0xe2"));           // cut off
    CHECK(starts(refusal_of("\xFF\xFE{"), "x.json: the file is UTF-16"));
    CHECK(starts(refusal_of("\xFE\xFF{"), "x.json: the file is UTF-16"));
}

TEST_CASE("a place has line, column and an excerpt that is cut between letters") {
    const Source source{"x.json", "{\r\n  \"a\": 1\r\n}\n"};
    const Place place = place_at(source, 10, "/a");
    CHECK(place.line == 2);
    CHECK(place.column == 8);
    CHECK(place.excerpt == "  \"a\": 1");
    CHECK(place.excerpt_column == 8);
    CHECK(place.pointer == "/a");
    CHECK(place_at(source, 10000).line == 4);

    std::string row;
    for (int i = 0; i < 300; ++i)
        row += "\xC3\xA9";
    const Place cut = place_at(Source{"y", row}, 301);
    CHECK(cut.column == 302);
    CHECK(cut.excerpt.size() <= 164);
    CHECK(static_cast<unsigned char>(cut.excerpt[0]) == 0xC3);
    CHECK(static_cast<unsigned char>(cut.excerpt.back()) == 0xA9);
}
