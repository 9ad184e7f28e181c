// SPDX-License-Identifier: MIT
#include "writing/hostile.hpp"

#include "writing/escape.hpp"
#include "writing/reading_back.hpp"
#include "writing/utf8.hpp"
#include "writing/writer_list.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <sstream>

using namespace routeweigh::writing;

namespace {

std::string written(const char* format, const Document& document) {
    const Writer* writer = find_writer(format);
    REQUIRE(writer != nullptr);
    return writer->write(document, {});
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

const std::set<std::string> allowed_elements = {
    "html",    "head",    "meta",    "title", "style",   "body", "a",   "div",    "header",
    "h1",      "h2",      "h3",      "h4",    "p",       "nav",  "ol",  "ul",     "li",
    "main",    "footer",  "strong",  "code",  "span",    "dl",   "dt",  "dd",     "table",
    "caption", "thead",   "tbody",   "tr",    "th",      "td",   "sup", "figure", "figcaption",
    "b",       "details", "summary", "aside", "section", "g",    "svg", "desc",   "defs",
    "pattern", "marker",  "rect",    "line",  "circle",  "path", "text"};

} // namespace

TEST_CASE("every writer turns every hostile name into valid UTF-8") {
    for (const Writer& writer : writer_list()) {
        for (const std::string& name : hostile_names()) {
            CAPTURE(writer.name);
            CAPTURE(name);
            const std::string text = writer.write(hostile_document(name), {});
            CHECK(text == valid_utf8(text));
        }
    }
}

TEST_CASE("no name becomes an element, an attribute or a script of a page") {
    for (const std::string& name : hostile_names()) {
        CAPTURE(name);
        const Markup page = read_markup(written("html", hostile_document(name)));
        for (const Tag& tag : page.tags) {
            CAPTURE(tag.name);
            CHECK(allowed_elements.count(tag.name) == 1);
            for (const auto& given : tag.attributes) {
                const auto& [attribute, value] = given;
                CAPTURE(given.first);
                CHECK(attribute.substr(0, 2) != "on");
                if (attribute == "href") CHECK(value.substr(0, 1) == "#");
                CHECK(attribute != "src");
            }
        }
        CHECK(page.text.find(clean(name)) != std::string::npos);
    }
}

TEST_CASE("the reader of the tests does find a name that was not escaped") {
    CHECK_THROWS(read_markup("<p><script>x</p>"));
    CHECK_THROWS(read_markup("<p>a & b</p>"));
    CHECK_THROWS(read_markup("<p title=x>a</p>"));
    CHECK(read_markup("<p>a<script>x</script></p>").tags.size() == 4);
}

TEST_CASE("no name moves the cursor of a terminal or turns its reading direction") {
    for (const std::string& name : hostile_names()) {
        CAPTURE(name);
        const std::string text = written("terminal", hostile_document(name));
        for (std::size_t at = 0; at < text.size();) {
            const CodePoint next = decode(text, at);
            const bool control =
                (next.value < 0x20 && next.value != '\n') || (next.value >= 0x7F && next.value < 0xA0);
            CHECK_FALSE(control);
            CHECK_FALSE((next.value >= 0x202A && next.value <= 0x202E));
            at += next.bytes;
        }
    }
}

TEST_CASE("with colour the only escape sequences are bold, dim and their end") {
    WriteOptions options;
    options.colour = true;
    for (const std::string& name : hostile_names()) {
        const std::string text = find_writer("terminal")->write(hostile_document(name), options);
        for (std::size_t at = text.find('\x1b'); at != std::string::npos; at = text.find('\x1b', at + 1)) {
            const std::string sequence = text.substr(at, 4);
            const bool known = sequence == "\x1b[1m" || sequence == "\x1b[2m" || sequence == "\x1b[0m";
            CHECK(known);
        }
    }
}

TEST_CASE("no line of a terminal is wider than its columns, whatever the names are") {
    for (const int width : {80, 60, 40}) {
        WriteOptions options;
        options.width = width;
        options.unfold = true;
        for (const std::string& name : hostile_names()) {
            CAPTURE(name);
            for (const std::string& line :
                 lines_of(find_writer("terminal")->write(hostile_document(name), options))) {
                CAPTURE(line);
                CHECK(display_width(line) <= width);
            }
        }
    }
}

TEST_CASE("a cell of a Markdown table stays one cell") {
    for (const std::string& name : hostile_names()) {
        CAPTURE(name);
        Document document;
        document.title = "t";
        Table table;
        table.columns = {{name}, {"b"}};
        table.rows = {{Cell(name), Cell("x")}};
        document.blocks = {table};
        const std::vector<std::string> lines = lines_of(written("markdown", document));
        int rows = 0;
        for (const std::string& line : lines) {
            if (line.empty() || line[0] != '|') continue;
            ++rows;
            int pipes = 0;
            for (std::size_t i = 0; i < line.size(); ++i) {
                if (line[i] == '\\') {
                    ++i; // the next character is escaped
                } else if (line[i] == '|') {
                    ++pipes;
                }
            }
            CAPTURE(line);
            CHECK(pipes == 3);
        }
        CHECK(rows == 3);
    }
}

TEST_CASE("markup of Markdown is escaped in running text") {
    CHECK(markdown_escape("a|b") == "a\\|b");
    CHECK(markdown_escape("*a* _b_") == "\\*a\\* \\_b\\_");
    CHECK(markdown_escape("<script>") == "&lt;script&gt;");
    CHECK(markdown_escape("# a") == "\\# a");
    CHECK(markdown_escape("- a") == "\\- a");
    CHECK(markdown_escape("12. a") == "12\\. a");
    CHECK(markdown_escape("12.5 g") == "12.5 g");
    CHECK(markdown_escape("a\nb") == "a b");
    CHECK(markdown_code("a`b", false) == "``a`b``");
    CHECK(markdown_code("`a", false) == "`` `a ``");
    CHECK(markdown_code("a|b", true) == "`a\\|b`");
}

TEST_CASE("text that a spreadsheet would take for a formula is led by an apostrophe") {
    CHECK(csv_text("=1+1") == "'=1+1");
    CHECK(csv_text("+1") == "'+1");
    CHECK(csv_text("-1") == "'-1");
    CHECK(csv_text("@A1") == "'@A1");
    CHECK(csv_text("\tx") == "'\tx");
    CHECK(csv_text("\rx") == "\"'\rx\"");
    CHECK(csv_text("a=b") == "a=b");
    CHECK(csv_text("4-bromoacetanilide, \"pure\"") == "\"4-bromoacetanilide, \"\"pure\"\"\"");
}
