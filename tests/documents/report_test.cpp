// SPDX-License-Identifier: MIT
// The structure of the report for every shipped set of routes: sections, tables, links, words that must not
// stand.
#include "documents/compared.hpp"
#include "documents/comparison_report.hpp"
#include "documents/sections/section.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <set>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

/// The text with every letter small and everything else a space, so that whole words can be looked for.
std::string plain_words(const std::string& text) {
    std::string words = " ";
    for (const char c : text)
        words += std::isalpha(static_cast<unsigned char>(c)) != 0
                     ? static_cast<char>(std::tolower(static_cast<unsigned char>(c)))
                     : ' ';
    return words + " ";
}

void check_words(const writing::Document& document) {
    const std::string words = plain_words(text_of(document));
    for (const char* word :
         {" safe ", " safer ", " safest ", " harmless ", " green score ", " nan ", " inf "}) {
        CAPTURE(word);
        CHECK(words.find(word) == std::string::npos);
    }
}

void check_tables(const std::vector<writing::Table>& tables) {
    for (const writing::Table& table : tables) {
        CAPTURE(table.caption);
        CHECK_FALSE(table.caption.empty());
        CHECK_FALSE(table.rows.empty());
        for (const writing::Row& row : table.rows)
            if (row.kind != writing::RowKind::group) CHECK(row.cells.size() <= table.columns.size());
    }
}

} // namespace

TEST_CASE("the report has its eleven sections in order, for any set of routes") {
    for (const RouteSet& set : shipped_sets()) {
        CAPTURE(set.folder);
        const Comparison comparison = compare_folder(set.folder, set.baseline);
        const writing::Document document = comparison_report(comparison);
        std::vector<std::string> anchors;
        for (const writing::Block& block : document.blocks)
            if (const auto* heading = std::get_if<writing::Heading>(&block.content()))
                if (heading->level == 2) anchors.push_back(heading->anchor);
        const std::vector<std::string> expected{"compared",  "in-short", "figures", "mass",
                                                "reactions", "hazard",   "bottles", "waste",
                                                "flask",     "workings", "sources"};
        CHECK(anchors == expected);
        CHECK(documents::all_sections().size() == expected.size() + 1); // one more where something was drawn
        check_words(document);
        check_tables(tables_in(document.blocks));
    }
}

TEST_CASE("the standing of its numbers goes with every row and column that shows figures of a route") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    std::set<std::string> ids;
    for (const auto& route : comparison.routes())
        ids.insert(route->route().id);
    std::size_t heads = 0;
    for (const writing::Table& table :
         tables_in(comparison_report(comparison, writing::Reader::people).blocks)) {
        for (const writing::Column& column : table.columns)
            if (ids.contains(column.heading)) {
                CHECK_FALSE(column.note.empty());
                ++heads;
            }
        for (const writing::Row& row : table.rows)
            if (!row.cells.empty() && ids.contains(row.cells[0].text)) {
                CHECK_FALSE(row.cells[0].note.empty());
                ++heads;
            }
    }
    CHECK(heads > 10 * ids.size());
}

TEST_CASE("every link leads to a place of the document, and no two places share a name") {
    for (const RouteSet& set : shipped_sets()) {
        CAPTURE(set.folder);
        const Anchors anchors =
            anchors_of(comparison_report(compare_folder(set.folder, set.baseline)).blocks);
        std::set<std::string> places;
        for (const std::string& place : anchors.places)
            if (!place.empty()) CHECK(places.insert(place).second);
        CHECK_FALSE(anchors.targets.empty());
        for (const std::string& target : anchors.targets) {
            CAPTURE(target);
            CHECK(places.contains(target));
        }
    }
}

TEST_CASE("a ceiling that stands on a trace says what the route file says of that trace") {
    const std::string words = text_of(comparison_report(compare_folder("4-bromoacetanilide", "A1")));
    CHECK(
        words.find("A7a: the ceiling rests on the trace of hydrobromic acid 48 %, 0.01 mg (invented here, no "
                   "source), which stands for the trace of acid that is always there.") != std::string::npos);
    CHECK(words.find("A7b: the ceiling rests on") == std::string::npos);
}

TEST_CASE("routes that pour no bromine are counted, a single one is not") {
    const std::string one =
        text_of(comparison_report(compare_folder("2-3-dibromo-3-phenylpropanoic-acid", "B1")));
    CHECK(one.find("; the other route pours none.") != std::string::npos);
    const std::string nine = text_of(comparison_report(compare_folder("4-bromoacetanilide", "A1")));
    CHECK(nine.find("; the nine other routes pour none.") != std::string::npos);
}

TEST_CASE("a single route has a report, too") {
    const std::string folder = "adipic-acid";
    const Comparison all = compare_folder(folder, "E1");
    REQUIRE(all.routes().size() > 1);
    const Comparison one = compare_texts({all.route(0).route().source->text});
    const writing::Document document = comparison_report(one);
    check_words(document);
    check_tables(tables_in(document.blocks));
}

TEST_CASE("readers, programs and spreadsheets each get only their part when they ask for it") {
    const Comparison comparison = compare_folder("ibuprofen", "six-step");
    const writing::Document people = comparison_report(comparison, writing::Reader::people);
    CHECK_FALSE(people.blocks.empty());
    CHECK_FALSE(people.machine.has_value());
    CHECK(people.rows.empty());
    const writing::Document programs = comparison_report(comparison, writing::Reader::programs);
    CHECK(programs.blocks.empty());
    CHECK(programs.machine.has_value());
    CHECK(programs.rows.empty());
    const writing::Document spreadsheets = comparison_report(comparison, writing::Reader::spreadsheets);
    CHECK(spreadsheets.blocks.empty());
    CHECK_FALSE(spreadsheets.machine.has_value());
    CHECK_FALSE(spreadsheets.rows.empty());
}
