// SPDX-License-Identifier: MIT
#include "input/csv_number.hpp"
#include "input/csv_reader.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace routeweigh;

namespace {

using Rows = std::vector<std::vector<std::string>>;

/// Gives so many bytes at a time, as a pipe does.
ReadBytes in_pieces(const std::string& text, std::size_t piece) {
    return [whole = bytes_of(text), piece](char* buffer, std::size_t size) {
        return whole(buffer, std::min(size, piece));
    };
}

Rows rows_of(const std::string& text, std::size_t piece = 1000000) {
    CsvReader reader("class.csv", in_pieces(text, piece));
    Rows rows;
    while (reader.next()) {
        rows.emplace_back();
        for (const std::string_view field : reader.fields())
            rows.back().emplace_back(field);
    }
    return rows;
}

std::string fault_of(const std::string& text) {
    try {
        rows_of(text);
    } catch (const InputError& error) {
        return error.what();
    }
    return {};
}

double number(const std::string& text, char separator = ';') {
    CsvNumbers numbers(separator);
    return numbers.read(text)->value;
}

std::string cell_fault(const std::string& text, char separator = ';') {
    CsvNumbers numbers(separator);
    try {
        numbers.read(text);
    } catch (const CellError& error) {
        return error.what();
    }
    return {};
}

bool holds(const std::string& text, const char* part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("commas, semicolons and tabs separate; the first row that holds anything decides") {
    const Rows wanted{{"bench", "mass"}, {"A1", "1.5"}};
    CHECK(rows_of("bench,mass\nA1,1.5\n") == wanted);
    CHECK(rows_of("bench;mass\nA1;1.5\n") == wanted);
    CHECK(rows_of("bench\tmass\nA1\t1.5\n") == wanted);
    CHECK(rows_of("\n\r\nbench;mass\nA1;1.5") == wanted);
    CHECK(rows_of("bench;mass, dry\nA1;1.5") == Rows{{"bench", "mass, dry"}, {"A1", "1.5"}});
}

TEST_CASE("a byte-order mark, every kind of line end and blank rows change nothing") {
    const Rows wanted{{"bench", "mass"}, {"A1", "1.5"}, {"A2", ""}};
    for (const char* text : {"\xEF\xBB\xBF"
                             "bench,mass\r\nA1,1.5\r\nA2,\r\n",
                             "bench,mass\rA1,1.5\rA2,\r", "bench,mass\n\n,\nA1,1.5\n , \nA2,",
                             "bench , mass\n A1,1.5 \nA2,\n\n\n"})
        CHECK(rows_of(text) == wanted);
}

TEST_CASE("quotes hold separators, line ends and doubled quotes (RFC 4180)") {
    CHECK(rows_of("a,b\n\"x, y\",\"say \"\"no\"\"\"\n\"two\nlines\",z\n") ==
          Rows{{"a", "b"}, {"x, y", "say \"no\""}, {"two\nlines", "z"}});
    CHECK(rows_of("a\n\"\"\"\"\n") == Rows{{"a"}, {"\""}});
}

TEST_CASE("how the bytes come in pieces does not matter") {
    std::string text = "bench;mass;note\r\n";
    for (int i = 0; i < 3000; ++i)
        text += "A" + std::to_string(i) + ";" + std::to_string(i) + ",5;\"quoted \"\"x\"\"\r\n\"\r\n";
    const Rows whole = rows_of(text);
    REQUIRE(whole.size() == 3001);
    CHECK(whole[3000] == std::vector<std::string>{"A2999", "2999,5", "quoted \"x\"\r\n"});
    for (const std::size_t piece : {1U, 7U, 4096U})
        CHECK(rows_of(text, piece) == whole);
}

TEST_CASE("each row knows its line, also behind quoted line ends") {
    CsvReader reader("x.csv", bytes_of("a\n\"1\n2\"\n\n3\n"));
    std::vector<std::size_t> lines;
    while (reader.next())
        lines.push_back(reader.line());
    CHECK(lines == std::vector<std::size_t>{1, 2, 5});
}

TEST_CASE("what cannot be a table is refused with its line") {
    CHECK(fault_of("a,b\n\"open,1\n2,3\n") == "class.csv:2: a quote is opened and never closed");
    CHECK(holds(fault_of("a,b\n\"x\"y,1\n"), "class.csv:2: text stands behind a quoted field"));
    CHECK(holds(fault_of(std::string("\xFF\xFE"
                                     "a\0,\0",
                                     6)),
                "UTF-16"));
    CHECK(holds(fault_of("PK\x03\x04 and so on"), "class.csv:1: this is a spreadsheet, not its text"));
    for (const char* json : {"{\"id\": 1}", "\xEF\xBB\xBF\n  {\n"})
        CHECK(holds(fault_of(json), "class.csv:1: this is JSON, and a table is wanted"));
    CHECK(fault_of("a{,b\n1,2\n").empty());
    CHECK(holds(fault_of("a,b\n" + std::string(200000, 'x') + "\n"),
                "class.csv:2: the row has more than 65536"));
    CHECK(fault_of("").empty());
    CHECK(rows_of("").empty());
}

TEST_CASE("a decimal point and a decimal comma are read, but not both in one file") {
    CHECK(number("1.352") == 1.352);
    CHECK(number("1,352") == 1.352);
    CHECK(number("-0,5") == -0.5);
    CHECK(number("1.2e-3") == 1.2e-3);
    CsvNumbers numbers(';');
    CHECK(numbers.read("1,5")->decimals == 1);
    CHECK_THROWS_WITH(numbers.read("1.5"), "\"1.5\" has a decimal point, the numbers before it a comma");
    CHECK(holds(cell_fault("1,5", ','), "commas separate the columns here"));
    CHECK(holds(cell_fault("1.352,5"), "two decimal signs"));
}

TEST_CASE("an exponent moves the last digit written") {
    CsvNumbers numbers(',');
    CHECK(numbers.read("2.2E+00")->decimals == 1);
    CHECK(numbers.read("2.2e-3")->decimals == 4);
    CHECK(numbers.read("2.25e1")->decimals == 1);
    CHECK(numbers.read("2e3")->decimals == 0);
    CHECK(numbers.read("0.1234567890123456")->decimals == 16);
}

TEST_CASE("an empty cell is no number and no fault") {
    CsvNumbers numbers(',');
    for (const char* cell : {"", "-", "n/a"})
        CHECK_FALSE(numbers.read(cell).has_value());
}

TEST_CASE("what a spreadsheet made of a number is named") {
    for (const char* cell : {"2.May", "2. Mai", "02-May", "May 26", "1/2/2026", "2026-05-02", "02.05.2026",
                             "5/12", "1. Dez", "2024-05-12", "12.05.24", "5/12/2024", "12-May"})
        CHECK_MESSAGE(holds(cell_fault(cell), "is a date that a spreadsheet made of a number"), cell);
    CHECK(holds(cell_fault("#DIV/0!"), "error of the spreadsheet"));
    CHECK(holds(cell_fault("1.5 g"), "the unit stands in the heading"));
    CHECK(cell_fault("about 2") == "\"about 2\" is no number");
    CHECK(cell_fault("1.5.") == "\"1.5.\" has two decimal signs; write no signs between thousands");
}

TEST_CASE("a range of temperatures is no date: a date has one sign, and a day, a month and a year") {
    for (const char* cell : {"166-168", "1.5", "165.5-167", "165-167.5", "165.5 - 167", "165.0-167",
                             "164.5-166", "12.5-14", "165/167", "165-167-169", "13.14.15", "31/12/3500"})
        CHECK_FALSE_MESSAGE(looks_like_date(cell), cell);
}
