// SPDX-License-Identifier: MIT
#include "input/field.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace routeweigh;
using doctest::Approx;

namespace {

struct Read {
    explicit Read(const std::string& text) : document(Document::parse(Source{"x.json", text})) {}

    Field root() { return document.root(problems); }
    // All problems, each without the name of the file.
    std::vector<std::string> found() const {
        std::vector<std::string> result;
        for (const Problem& problem : problems.all)
            result.push_back(format(problem).substr(std::string("x.json:").size()));
        return result;
    }

    Document document;
    Problems problems;
};

using Lines = std::vector<std::string>;

} // namespace

TEST_CASE("fields read values of their type") {
    Read read(R"({"text": "a", "number": 2.5, "whole": 3.0, "yes": true, "list": ["b", "c"], "null": null,
                  "mass": "250 mg", "time": "1 h", "share": "85 %", "warm": "20 degC"})");
    const Field root = read.root();
    CHECK(root["text"].text() == "a");
    CHECK(root["number"].number() == 2.5);
    CHECK(root["whole"].integer() == 3);
    CHECK(root["yes"].boolean());
    CHECK(root["list"].texts() == Lines{"b", "c"});
    CHECK(root["list"].items()[1].text() == "c");
    CHECK(root["mass"].mass().in(unit::g) == Approx(0.25));
    CHECK(root["time"].duration().in(unit::min) == Approx(60));
    CHECK(root["share"].fraction() == Approx(0.85));
    CHECK(root["warm"].temperature().celsius() == 20);
    CHECK(root["mass"].quantity().unit == "mg");
    CHECK(root["text"].one_of({"a", "b"}) == "a");
    CHECK_FALSE(root.maybe("null"));
    CHECK_FALSE(root.maybe("nothing"));
    CHECK(root.maybe("text")->is_text());
    CHECK(root["null"].is_null());
    CHECK(root.is_object());
    CHECK(root.keys().size() == 10);
    root.close();
    CHECK(read.found().empty());
}

TEST_CASE("a whole number out of its bounds is refused, also where its low bits would be within them") {
    Read read(R"({"a": 50, "b": 51, "c": 4294967297, "d": -4294967295, "e": 2.5})");
    const Field root = read.root();
    for (const char* const key : {"a", "b", "c", "d", "e"})
        CHECK(root[key].integer(1, 50) == (*key == 'a' ? 50 : 1));
    CHECK(read.found() == Lines{"1 /b: 51 is no whole number from 1 to 50",
                                "1 /c: 4294967297 is no whole number from 1 to 50",
                                "1 /d: -4294967295 is no whole number from 1 to 50",
                                "1 /e: expected a whole number, found 2.5"});
}

TEST_CASE("readers go on after a fault, and all faults are reported with their places") {
    Read read(R"({
  "a": 1,
  "b": {"amount": "5 gg", "role": "solvnt", "time": "30 mL"},
  "c": [true, "2,5 g"],
  "d": 2.5
})");
    const Field root = read.root();
    CHECK(root["a"].text() == "");
    CHECK(root["b"]["amount"].mass() == Mass{});
    CHECK(root["b"]["role"].one_of({"solvent", "reagent"}) == "");
    CHECK(root["b"]["time"].duration() == Duration{});
    CHECK(root["c"].items()[0].number() == 0);
    CHECK(root["c"].items()[1].mass() == Mass{});
    CHECK(root["d"].integer() == 0);
    CHECK(root["e"]["f"].items().empty());
    CHECK(read.found() ==
          Lines{
              "2 /a: expected a text, found a number",
              "3 /b/amount: unknown unit \"gg\" in \"5 gg\"",
              "3 /b/role: \"solvnt\" is none of: \"solvent\", \"reagent\"; nearest: \"solvent\"",
              "3 /b/time: \"30 mL\" is a volume, expected a time such as \"30 min\"",
              "4 /c/0: expected a number, found true",
              std::string("4 /c/1: \"2,5 g\" has a comma in its number; ") +
                  "write a decimal point, and nothing between thousands",
              "5 /d: expected a whole number, found 2.5",
              "1: the key \"e\" is missing",
          });
    CHECK_THROWS_AS(read.problems.throw_if_error(), InputError);
}

TEST_CASE("one fault is reported once") {
    Read read(R"({"a": 1})");
    const Field root = read.root();
    for (int i = 0; i < 3; ++i) {
        CHECK(root["a"].mass() == Mass{});
        root["a"].problem("a mass must be above 0"); // the reader sees the neutral zero
        CHECK(root["b"].text() == "");
        root["b"].problem("a name must not be empty");
    }
    CHECK(read.found() ==
          Lines{"1 /a: expected a quantity in double quotes such as \"2.5 g\", found a number",
                "1: the key \"b\" is missing"});
}

TEST_CASE("what should be a share or a yield is asked for with a percentage") {
    Read read(R"({"share": 70, "yield": 70})");
    const Field root = read.root();
    root["share"].fraction();
    root["yield"].quantity(PlusMinus::read, "70 %");
    CHECK(read.found() ==
          Lines{"1 /share: expected a quantity in double quotes such as \"70 %\", found a number",
                "1 /yield: expected a quantity in double quotes such as \"70 %\", found a number"});
}

TEST_CASE("keys that nobody asked for are refused with the nearest that somebody did") {
    Read read(R"({"material": "x", "amout": "1 g", "zzz": 1,
                  "inner": {"odd/key": 1}})");
    const Field root = read.root();
    root["material"].text();
    root.maybe("amount");
    root["inner"].close();
    root.close();
    CHECK(read.found() == Lines{"2 /inner/odd~1key: unknown key \"odd/key\"",
                                "1 /amout: unknown key \"amout\"; nearest: \"amount\"",
                                "1 /zzz: unknown key \"zzz\""});
    // A second reading starts with nothing asked for.
    Problems again;
    read.document.root(again).close();
    CHECK(again.all.size() == 4);
}

TEST_CASE("problems and warnings of readers carry the place; a contradiction carries two") {
    Read read("{\n\"a\": 1,\n\"b\": 2}");
    const Field root = read.root();
    root["b"].warning("odd");
    CHECK_FALSE(read.problems.any_error());
    read.problems.throw_if_error();
    root["b"].contradiction("b must not be above a", root["a"]);
    root["a"].problem("no", "yes");
    CHECK(read.found() == Lines{"3 /b: warning: odd",
                                "3 /b: b must not be above a; the other place: x.json:2 /a",
                                "2 /a: no; nearest: \"yes\""});
    CHECK(root["b"].place().column == 6);
    CHECK(root["b"].place().excerpt == "\"b\": 2}");
    CHECK(root["b"].pointer() == "/b");
}

TEST_CASE("after a hundred errors one more says that the others are not listed") {
    std::string text = "[";
    for (int i = 0; i < 500; ++i)
        text += i == 0 ? "1" : ",\n1";
    Read read(text + "]");
    for (const Field& item : read.root().items())
        item.text();
    REQUIRE(read.problems.all.size() == 101);
    CHECK(read.problems.all[99].place.line == 100);
    CHECK(read.problems.all[100].message == "more than 100 problems; the others are not listed");
}
