// SPDX-License-Identifier: MIT
// What is printed of bottles and streams: nothing missing, the jurisdiction always, no promise anywhere.
#include "documents/hazards_document.hpp"

#include "app/session.hpp"
#include "documents/compared.hpp"
#include "documents/comparison_report.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

std::vector<Route> routes_of(const std::string& folder) {
    std::vector<SourcePtr> sources;
    for (const auto& entry : std::filesystem::directory_iterator(ROUTEWEIGH_ROOT "/routes/" + folder)) {
        std::ifstream stream(entry.path());
        std::ostringstream text;
        text << stream.rdbuf();
        sources.push_back(make_source(entry.path().string(), text.str()));
    }
    Problems problems;
    return read_routes(sources, Catalogue::embedded(), problems);
}

const writing::Table& table_of(const std::vector<writing::Table>& tables, std::string_view caption) {
    for (const writing::Table& table : tables)
        if (table.caption.find(caption) != std::string::npos) return table;
    throw std::runtime_error("no table " + std::string(caption));
}

std::string cell(const writing::Table& table, std::string_view row, std::string_view column) {
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        if (table.columns[i].heading == column)
            for (const writing::Row& line : table.rows)
                if (line.kind != writing::RowKind::group && line.cells[0].text == row)
                    return line.cells[i].text;
    return "no such cell";
}

void check_no_promise(const std::string& text) {
    for (const char* word : {" safe ", " safer ", " safe.", " harmless", " non-toxic", " nontoxic"}) {
        CAPTURE(word);
        CHECK(text.find(word) == std::string::npos);
    }
}

} // namespace

TEST_CASE("each bottle and stream is printed with its label, by any set of limits, which is named") {
    for (const MixtureRegime regime : {MixtureRegime::eu, MixtureRegime::un, MixtureRegime::us}) {
        const ClassificationRules rules(Catalogue::embedded(), {regime, {}});
        for (const RouteSet& set : shipped_sets()) {
            CAPTURE(set.folder);
            const std::vector<Route> routes = routes_of(set.folder);
            const writing::Document document = hazards_document(routes, rules);
            const std::string text = text_of(document);
            CHECK(text.find("Judged by " + rules.mixture.limits.title) != std::string::npos);
            CHECK(text.find("no rules for waste") != std::string::npos);
            check_no_promise(text);
            for (const Route& route : routes)
                for (const Step& step : route.steps)
                    for (const Stage& stage : step.stages)
                        for (const Charge& charge : stage.charges)
                            CHECK((charge.as_used || text.find(charge.material->name) != std::string::npos));
            const auto tables = tables_in(document.blocks);
            for (const writing::Row& row : table_of(tables, "Bottles that").rows)
                CHECK(row.cells.size() == 5);
            CHECK(document.rows.rows.size() > 4);
            for (const auto& row : document.rows.rows)
                CHECK(row.size() == document.rows.columns.size());
        }
    }
}

TEST_CASE("the building blocks of the UN that are on and off are named") {
    const ClassificationRules rules(
        Catalogue::embedded(),
        {MixtureRegime::un, {{"acute-toxicity-5", false}, {"low-sensitiser-limits", true}}});
    const std::string text = text_of(hazards_document(routes_of("adipic-acid"), rules));
    const std::size_t without = text.find("; without ");
    REQUIRE(without != std::string::npos);
    CHECK(text.find("sensitisers of category 1 from 0.1 %") < without);
    CHECK(text.find("acute toxicity, category 5") > without);
}

TEST_CASE("the report shows who opens bromine, and what is opened where it left") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    const writing::Document document = comparison_report(comparison);
    const auto tables = tables_in(document.blocks);
    const writing::Table& bottles = table_of(tables, "Bottles opened");
    CHECK(cell(bottles, "bromine", "A1") == "x");
    CHECK(cell(bottles, "bromine", "A3") == "");
    CHECK(cell(bottles, "bromine", "statements") == "H314 H330 H400 EUH071");
    CHECK(cell(bottles, "hydrobromic acid 48 %", "A1") == "");
    CHECK(cell(bottles, "hydrobromic acid 48 %", "A3") == "x");
    CHECK(cell(bottles, "hydrobromic acid 48 %", "statements").find("H314 H335") == 0);
    CHECK(cell(bottles, "hydrogen peroxide 30 %", "A3") == "x");
    CHECK(table_of(tables, "Streams by signal word").rows.size() == comparison.routes().size());
    const std::string text = text_of(document);
    CHECK(text.find("Only A1 opens") != std::string::npos);
    CHECK(text.find("hydrobromic acid 48 % (Danger; H314 H335") != std::string::npos);
    CHECK(text.find("Judged by EU CLP.") != std::string::npos);
    check_no_promise(text);
}

TEST_CASE("data for programs carry no classification, which costs time; the report for people does") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    CHECK(comparison_report(comparison, writing::Reader::programs).blocks.empty());
    CHECK(text_of(comparison_report(comparison, writing::Reader::people)).find("Bottles opened") !=
          std::string::npos);
}
