// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"
#include "writing/sample_document.hpp"
#include "writing/table_layout.hpp"
#include "writing/terminal_table.hpp"
#include "writing/utf8.hpp"
#include "writing/wrap.hpp"
#include "writing/writer_list.hpp"

#include <doctest/doctest.h>

#include <sstream>

using namespace routeweigh::writing;

namespace {

std::vector<std::string> terminal_lines(const Document& document, const WriteOptions& options = {}) {
    std::vector<std::string> lines;
    std::istringstream stream(find_writer("terminal")->write(document, options));
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

bool holds(const std::vector<std::string>& lines, const std::string& words) {
    for (const std::string& line : lines) {
        if (line.find(words) != std::string::npos) return true;
    }
    return false;
}

} // namespace

TEST_CASE("the sample keeps to eighty columns and is plain without colour") {
    for (const std::string& line : terminal_lines(sample_document())) {
        CAPTURE(line);
        CHECK(display_width(line) <= 80);
        CHECK(line.find('\x1b') == std::string::npos);
        CHECK((line.empty() || line.back() != ' '));
    }
}

TEST_CASE("colour adds escape sequences and nothing else") {
    WriteOptions options;
    options.colour = true;
    std::string coloured = find_writer("terminal")->write(sample_document(), options);
    CHECK(coloured.find("\x1b[1m") != std::string::npos);
    for (const char* sequence : {"\x1b[1m", "\x1b[2m", "\x1b[0m"}) {
        for (std::size_t at = coloured.find(sequence); at != std::string::npos;
             at = coloured.find(sequence)) {
            coloured.erase(at, 4);
        }
    }
    CHECK(coloured == find_writer("terminal")->write(sample_document(), {}));
}

TEST_CASE("folded blocks show their summary, and their contents when asked for") {
    CHECK(holds(terminal_lines(sample_document()), "[+] Working of the atom economy of A3"));
    CHECK_FALSE(holds(terminal_lines(sample_document()), "0.8559"));
    WriteOptions options;
    options.unfold = true;
    CHECK(holds(terminal_lines(sample_document(), options), "0.8559"));
}

TEST_CASE("tables in folds have no number, so a table has the same number in every format") {
    Table seen, folded;
    seen.caption = "Seen";
    folded.caption = "Folded";
    seen.columns = folded.columns = {{.heading = "route"}};
    Document document;
    document.title = "Folds";
    document.blocks = {seen, Folded{"a fold", {folded}}, seen};
    WriteOptions options;
    options.unfold = true;
    for (const char* format : {"terminal", "html", "markdown"}) {
        CAPTURE(format);
        const std::string text = find_writer(format)->write(document, options);
        CHECK(text.find("Table 1.") < text.find("Folded"));
        CHECK(text.find("Table 2.") > text.find("Folded"));
        CHECK(text.find("Table 2.") != std::string::npos);
        CHECK(text.find("Table 3.") == std::string::npos);
    }
}

TEST_CASE("who reads a folded text in a terminal is told how to unfold it") {
    WriteOptions options;
    options.unfold_by = "--all";
    CHECK(holds(terminal_lines(sample_document(), options), "--all"));
    options.unfold = true;
    CHECK_FALSE(holds(terminal_lines(sample_document(), options), "--all"));
}

TEST_CASE("a row of detail is indented below its row") {
    Table table;
    table.columns = {{.heading = "figure"}, {.heading = "A1", .align = Align::decimal}};
    table.rows = {Row{"mass", "1.0"}, Row({Cell("against"), Cell("+0.5")}, RowKind::detail)};
    const std::vector<std::string> lines = terminal_table(table, 80, {});
    CHECK(lines[lines.size() - 2].starts_with("mass"));
    CHECK(lines.back().starts_with("  against"));
}

TEST_CASE("decimal points stand below each other") {
    Table table;
    table.columns = {{"a"}, {"g", Align::decimal}};
    table.rows = {
        {"x", Cell("1.352", 1)}, {"y", Cell("12.5", 1)}, {"z", Cell("3", 1)}, {"w", missing("none")}};
    const std::vector<std::string> lines = terminal_table(table, 80, {});
    REQUIRE(lines.size() == 7);
    CHECK(lines[2].find('.') == lines[3].find('.'));
    CHECK(lines[4].find('3') + 1 == lines[3].find('.'));
    CHECK(lines[5].find("- [a]") != std::string::npos);
    CHECK(lines[6] == "[a] none");
}

TEST_CASE("a table too wide for the terminal is cut by columns and repeats the row headers") {
    Table table;
    table.columns = {{"figure"}};
    Row row{"process mass intensity"};
    for (int i = 0; i < 20; ++i) {
        table.columns.push_back({"R" + std::to_string(i), Align::decimal});
        row.cells.push_back(Cell("1234.56", 1234.56));
    }
    table.rows = {row};
    int headers = 0;
    int numbers = 0;
    for (const std::string& line : terminal_table(table, 80, {})) {
        CHECK(display_width(line) <= 80);
        if (line.find("process mass intensity") != std::string::npos) ++headers;
        for (std::size_t at = line.find("1234.56"); at != std::string::npos;
             at = line.find("1234.56", at + 1))
            ++numbers;
    }
    CHECK(headers >= 3);
    CHECK(numbers == 20);
}

TEST_CASE(
    "a drawing beside a row header is shown in the first part of a table that was cut, and only there") {
    Table table;
    table.columns = {
        {.heading = "substance"}, {.heading = "adds", .align = Align::decimal}, {.heading = "source"}};
    Cell drawn("acetone");
    drawn.drawing = 0;
    table.rows.push_back({drawn, Cell("1.5", 1.5), "a list"});
    const std::vector<Table> parts = split_columns(table, {{0, 1}, {0, 2}});
    CHECK(parts[0].rows[0].cells[0].drawing == 0);
    CHECK(parts[1].rows[0].cells[0].drawing == -1);
    CHECK(parts[1].rows[0].cells[0].text == "acetone");
}

TEST_CASE("a part of a table that was cut has no sum where nothing is summed") {
    Table table;
    table.columns = {
        {.heading = "substance"}, {.heading = "adds", .align = Align::decimal}, {.heading = "source"}};
    table.rows.push_back({"acetone", Cell("1.5", 1.5), "a list"});
    table.rows.push_back(Row({"sum", Cell("1.5", 1.5)}, RowKind::total));
    const std::vector<Table> parts = split_columns(table, {{0, 1}, {0, 2}});
    REQUIRE(parts.size() == 2);
    REQUIRE(parts[0].rows.size() == 2);
    CHECK(parts[0].rows[1].cells[0].text == "sum");
    REQUIRE(parts[1].rows.size() == 1);
    CHECK(parts[1].rows[0].cells[1].text == "a list");
}

TEST_CASE("every column is in exactly one part, after the row header") {
    const auto parts = fit_columns({20, 10, 10, 30, 50, 5}, 2, 60, true);
    std::vector<std::size_t> seen;
    for (const auto& part : parts) {
        CHECK(part.front() == 0);
        seen.insert(seen.end(), part.begin() + 1, part.end());
    }
    CHECK(seen == std::vector<std::size_t>{1, 2, 3, 4, 5});
}

TEST_CASE("equal notes share a letter") {
    Table table;
    table.columns = {{"a"}, {"b"}};
    table.rows = {{"x", missing("one")}, {"y", missing("two")}, {"z", missing("one")}};
    const TableNotes notes(table);
    CHECK(notes.notes().size() == 2);
    CHECK(notes.letter("one") == "a");
    CHECK(notes.letter("two") == "b");
    CHECK(TableNotes::letter_at(26) == "aa");
}

TEST_CASE("text is broken at spaces, figures with their unit are not broken") {
    CHECK(wrap_plain("one two three", 8) == std::vector<std::string>{"one two", "three"});
    CHECK(wrap_plain("abcdefghij", 4) == std::vector<std::string>{"abcd", "efgh", "ij"});
    CHECK(wrap_plain("", 4) == std::vector<std::string>{""});
    const auto lines = wrap(Text{"falls to ", number("53.4 g/g"), ", it says"}, 14);
    REQUIRE(lines.size() == 3);
    CHECK(lines[1][0].text == "53.4 g/g");
    CHECK(lines[1][1].text == ",");
}

TEST_CASE("widths are counted in columns, not in bytes") {
    CHECK(display_width("\xC3\xA9t\xC3\xA9") == 3);
    CHECK(display_width("e\xCC\x81") == 1);
    CHECK(display_width("\xE9\x85\xB8") == 2);
    CHECK(pad_right("\xC3\xA9", 3) == "\xC3\xA9  ");
}

TEST_CASE("short numbers have three digits") {
    CHECK(short_number(0) == "0");
    CHECK(short_number(9.996) == "10.0");
    CHECK(short_number(0.01234) == "0.0123");
    CHECK(short_number(1690.4) == "1690");
    CHECK(short_number(-53.44) == "\u221253.4");
    CHECK(short_number(1e-9) == "1.00e-09");
    CHECK(decimals_after("53.4") == 1);
    CHECK(decimals_after(">= 12.50") == 2);
    CHECK(decimals_after("a.b") == 0);
    CHECK(decimals_after("1.00e-09") == 0);
}

TEST_CASE("writers are found by name") {
    CHECK(find_writer("html") != nullptr);
    CHECK(find_writer("pdf") == nullptr);
    for (const Writer& writer : writer_list()) {
        CHECK(find_writer(writer.name) == &writer);
        CHECK_FALSE(writer.about.empty());
        CHECK_FALSE(writer.write(Document{}, {}).empty());
    }
}
