// SPDX-License-Identifier: MIT
#include "writing/csv_writer.hpp"
#include "writing/escape.hpp"
#include "writing/hostile.hpp"
#include "writing/json_writer.hpp"
#include "writing/reading_back.hpp"
#include "writing/sample_document.hpp"
#include "writing/tables_of.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <limits>

using namespace routeweigh::writing;
using Json = nlohmann::ordered_json;

namespace {

std::string guarded(const std::string& text) {
    const std::string valid = valid_utf8(text);
    const bool formula = !valid.empty() && std::string("=+-@\t\r").find(valid[0]) != std::string::npos;
    return formula ? "'" + valid : valid;
}

} // namespace

TEST_CASE("rows written as CSV are read back by the rules of RFC 4180") {
    Document document;
    document.rows.columns = {"name", "value", "note"};
    for (const std::string& name : hostile_names())
        document.rows.rows.push_back({name, 0.1, DataCell()});
    const auto rows = read_csv(write_csv(document, {}));
    REQUIRE(rows.size() == hostile_names().size() + 1);
    CHECK(rows[0] == std::vector<std::string>{"name", "value", "note"});
    for (std::size_t i = 0; i < hostile_names().size(); ++i) {
        REQUIRE(rows[i + 1].size() == 3);
        CHECK(rows[i + 1][0] == guarded(hostile_names()[i]));
        CHECK(rows[i + 1][1] == "0.1");
        CHECK(rows[i + 1][2] == "");
    }
}

TEST_CASE("numbers of CSV are unrounded, negative ones stay numbers and what is not finite is empty") {
    Document document;
    document.rows = {
        {"v"}, {{1.0 / 3.0}, {-2.5}, {std::nan("")}, {std::numeric_limits<double>::infinity()}, {1690.0}}};
    const auto rows = read_csv(write_csv(document, {}));
    REQUIRE(rows.size() == 6);
    CHECK(std::stod(rows[1][0]) == 1.0 / 3.0);
    CHECK(rows[2][0] == "-2.5");
    CHECK(rows[3][0] == "");
    CHECK(rows[4][0] == "");
    CHECK(std::stod(rows[5][0]) == 1690.0);
}

TEST_CASE("a short row is filled with empty fields") {
    Document document;
    document.rows = {{"a", "b", "c"}, {{"x"}}};
    CHECK(write_csv(document, {}) == "a,b,c\r\nx,,\r\n");
}

TEST_CASE("without rows of its own a document gives its tables in long form") {
    Document document = sample_document();
    document.rows = {};
    const auto rows = read_csv(write_csv(document, {}));
    CHECK(rows[0] == std::vector<std::string>{"section", "table", "group", "line", "row", "column", "value",
                                              "unit", "note"});
    bool found = false;
    bool missing_found = false;
    for (const auto& row : rows) {
        REQUIRE(row.size() == 9);
        if (row[4] == "atom economy, net" && row[5] == "A2b") found = row[6] == "67.11";
        if (row[4] == "chlorine economy" && row[5] == "A1") {
            missing_found = row[6].empty() && row[8] == "the product holds no chlorine";
        }
    }
    CHECK(found);
    CHECK(missing_found);
}

TEST_CASE("rows of equal name are told apart by the section and the group that they stand in") {
    Document document;
    for (const char* step : {"Step 1", "Step 2"}) {
        document.blocks.push_back(Heading{2, step});
        document.blocks.push_back(Heading{3, "Reagents"});
        Table table;
        table.caption = "Reagents";
        table.columns = {{.heading = "reagent"}, {.heading = "mass"}};
        table.rows = {{"ice", "1"}, group("work-up"), {"water", "2"}, group("washing"), {"water", "3"}};
        document.blocks.push_back(Folded{"more", {std::move(table)}});
    }
    const auto rows = read_csv(write_csv(document, {}));
    REQUIRE(rows.size() == 7);
    CHECK(rows[1] == std::vector<std::string>{"Step 1", "Reagents", "", "1", "ice", "mass", "1", "", ""});
    CHECK(rows[2][2] == "work-up");
    CHECK(rows[3][2] == "washing");
    CHECK(rows[6] ==
          std::vector<std::string>{"Step 2", "Reagents", "washing", "3", "water", "mass", "3", "", ""});
}

TEST_CASE("JSON keeps the order of members, unrounded numbers, and null for what is missing") {
    Document document;
    document.machine = MachineObject{{"zeta", 1.0 / 3.0},
                                     {"alpha", 7},
                                     {"truth", true},
                                     {"nothing", {}},
                                     {"endless", std::numeric_limits<double>::infinity()},
                                     {"list", MachineList{MachineTree("x"), MachineObject{}, MachineList{}}}};
    const std::string text = write_json(document, {});
    const Json json = Json::parse(text);
    CHECK(text.find("zeta") < text.find("alpha"));
    CHECK(json["zeta"].get<double>() == 1.0 / 3.0);
    CHECK(json["alpha"] == 7);
    CHECK(json["truth"] == true);
    CHECK(json["nothing"].is_null());
    CHECK(json["endless"].is_null());
    CHECK(json["list"].size() == 3);
    CHECK(text.back() == '\n');
}

TEST_CASE("hostile names come back from JSON unchanged but for broken UTF-8") {
    for (const std::string& name : hostile_names()) {
        CAPTURE(name);
        const Json json = Json::parse(write_json(hostile_document(name), {}));
        const std::string back = json["name"].get<std::string>();
        if (name == valid_utf8(name)) {
            CHECK(back == name);
        } else {
            CHECK(back.find("\xEF\xBF\xBD") != std::string::npos);
        }
    }
}

TEST_CASE("without a tree of its own a document gives its tables as JSON") {
    Document document = sample_document();
    document.machine.reset();
    const Json json = Json::parse(write_json(document, {}));
    CHECK(json["document"] == "sample");
    CHECK(json["tables"].size() == 9); // three tables, one of them folded away, and six figures
    CHECK(json["tables"][0]["rows"][1][4] == 67.11);
    CHECK(json["tables"][0]["rows"][2][2].is_null());
    // What a reader would see at a cell or below the table is there for programs too.
    const auto sample = tables_of(sample_document()).front();
    CHECK(json["tables"][0]["remarks"].size() == sample.remarks.size());
    std::size_t notes = 0;
    for (const auto& note : json["tables"][0]["notes"]) {
        ++notes;
        const auto& row = json["tables"][0]["rows"].at(note["row"].get<std::size_t>());
        CHECK(note["column"].get<std::size_t>() < row.size());
        CHECK(!note["note"].get<std::string>().empty());
    }
    CHECK(notes > 0);
}
