// SPDX-License-Identifier: MIT
// A file in the place of another kind is told in one line; what is no known kind is left to its reader.
#include "input/file_kind.hpp"

#include <doctest/doctest.h>

#include <string>

namespace routeweigh {
namespace {

struct Example {
    FileKind kind;
    const char* text;
};

constexpr Example examples[] = {
    {FileKind::route, R"({"id": "A", "steps": []})"},
    {FileKind::course, R"({"id": "A", "experiments": []})"},
    {FileKind::price_list, R"({"title": "A", "packs": []})"},
    {FileKind::container_log, R"({"container": "halogenated", "additions": []})"},
    {FileKind::mixture, R"({"name": "A", "ingredients": []})"},
    {FileKind::rules, R"({"id": "A", "kind": "local rules"})"},
};

/// "" where the text passes.
std::string refusal(const char* text, FileKind wanted) {
    const Document document = Document::parse(Source{"a.json", text});
    Problems problems;
    const Field root = document.root(problems);
    try {
        expect_kind(root, wanted);
    } catch (const InputError& error) {
        return error.what();
    }
    // What was looked at counts as asked for by nobody, or a stray key would pass.
    CHECK(problems.all.empty());
    return {};
}

} // namespace

TEST_CASE("every kind passes as itself and as no other") {
    for (const Example& example : examples)
        for (const Example& wanted : examples) {
            CAPTURE(example.text);
            CAPTURE(wanted.text);
            CHECK(refusal(example.text, wanted.kind).empty() == (example.kind == wanted.kind));
        }
    CHECK(refusal(R"({"id": "A", "experiments": []})", FileKind::route) ==
          "a.json:1 /experiments: this is a course file, and a route file is wanted");
}

TEST_CASE("what has no key of another kind is left to its reader, and so is what has two") {
    for (const char* text : {"{}", "[]", "\"steps\"", R"({"id": "A", "stepz": []})"})
        CHECK(refusal(text, FileKind::route).empty());
    CHECK(refusal(R"({"steps": [], "experiments": []})", FileKind::route).empty());
}

TEST_CASE("a stray key of another kind is still refused as one that nobody asked for") {
    const Document document = Document::parse(Source{"a.json", R"({"steps": [], "packs": []})"});
    Problems problems;
    const Field root = document.root(problems);
    expect_kind(root, FileKind::route);
    root["steps"].items();
    root.close();
    REQUIRE(problems.all.size() == 1);
    CHECK(problems.all.front().message == "unknown key \"packs\"");
}

} // namespace routeweigh
