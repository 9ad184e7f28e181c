// SPDX-License-Identifier: MIT
// What papers need beside reports: boxes to tick, drawings in cells, XML.
#include "writing/html_writer.hpp"
#include "writing/label_sheet.hpp"
#include "writing/markdown_writer.hpp"
#include "writing/terminal_writer.hpp"
#include "writing/wrap.hpp"
#include "writing/xml.hpp"

#include <doctest/doctest.h>

namespace routeweigh::writing {
namespace {

Document drawn(std::string lines) {
    Table table;
    table.columns = {{.heading = "name"}};
    table.drawings = {{100, 50, 0.5, 2, std::move(lines), "", "a picture of <nothing>"}};
    Cell cell("ethanol");
    cell.drawing = 0;
    table.rows.push_back({cell});
    Document document;
    document.blocks.push_back(std::move(table));
    return document;
}

TEST_CASE("a drawing is put into its cell with its text alternative, escaped") {
    const std::string page = write_html(drawn("M0 0L10 10"), {});
    CHECK(page.find("<path d=\"M0 0L10 10\"") != std::string::npos);
    CHECK(page.find("aria-label=\"a picture of &lt;nothing&gt;\"") != std::string::npos);
    CHECK(page.find("width=\"50\" height=\"25\" viewBox=\"0 0 100 50\"") != std::string::npos);
}

TEST_CASE("a drawing that holds anything but path data is not shown") {
    const std::string page = write_html(drawn("M0 0\"/><script>alert(1)</script>"), {});
    CHECK(page.find("<script") == std::string::npos);
    CHECK(page.find("class=\"drawing\"") == std::string::npos);
    CHECK(page.find("ethanol") != std::string::npos);
}

TEST_CASE("only a small table without drawings is kept on one sheet of paper") {
    const auto page_of = [](std::size_t rows, bool pictures, const std::string& words = "ethanol") {
        Document document = drawn("M0 0L10 10");
        auto& table = std::get<Table>(document.blocks.front());
        if (!pictures) table.drawings.clear();
        table.rows.resize(rows, Row{Cell(words)});
        return write_html(document, {});
    };
    CHECK(page_of(6, false).find("<table class=\"short\">") != std::string::npos);
    CHECK(page_of(7, false).find("<table class=\"long\">") != std::string::npos);
    std::string four_lines; // of some 120 letters on paper
    while (four_lines.size() < 480)
        four_lines += "ethanol ";
    CHECK(page_of(2, false, four_lines).find("<table class=\"short\">") != std::string::npos);
    CHECK(page_of(6, false, four_lines).find("<table class=\"long\">") != std::string::npos);
    CHECK(page_of(1, true).find("<table class=\"long\">") != std::string::npos);
}

TEST_CASE("labels of one size have their pictograms in one place, however long the text") {
    // Millimetres of the label of eight to a sheet of A4; the pictograms of a common solvent, and all at
    // once.
    for (const std::vector<std::string>& marks : {std::vector<std::string>{"GHS07"},
                                                  {"GHS02", "GHS07"},
                                                  {"GHS02", "GHS05", "GHS06", "GHS08", "GHS09"}})
        for (const std::size_t words : {1U, 30U, 60U}) {
            CAPTURE(words);
            LabelSheet::Label label;
            label.name = "ethanol";
            label.pictograms = marks;
            for (std::size_t i = 0; i < words; ++i)
                label.statements += "Causes serious eye irritation. ";
            const LabelFit fit = fit_label(label, 99.1, 67.7);
            CHECK(fit.fits);
            CHECK(fit.beside);
        }
    LabelSheet::Label narrow;
    narrow.name = "ethanol";
    narrow.pictograms = {"GHS02"};
    const LabelFit fit = fit_label(narrow, 30, 70); // beside 20 mm no room is left to read
    CHECK(fit.fits);
    CHECK_FALSE(fit.beside);
}

TEST_CASE("per cent stays with its number on a label, and with what it is a per cent of") {
    LabelSheet sheet;
    sheet.columns = sheet.rows = 1;
    sheet.width = sheet.height = 90;
    LabelSheet::Label label;
    label.name = "sodium metabisulfite 10 % w/v";
    label.contents = "By mass: water 92.4 %, sodium metabisulfite 7.6 %";
    sheet.labels = {label};
    const std::string html = html_labels(sheet);
    CHECK(html.find("sodium metabisulfite 10\u00A0%\u00A0w/v<") != std::string::npos);
    CHECK(html.find("water 92.4\u00A0%, sodium metabisulfite 7.6\u00A0%<") != std::string::npos);
    CHECK(hold_per_cent("50 % v/v; 3 %") == "50\u00A0%\u00A0v/v; 3\u00A0%");
}

TEST_CASE("a cell that names no drawing of its table shows none") {
    Document document = drawn("M0 0L10 10");
    std::get<Table>(document.blocks.front()).drawings.clear();
    CHECK(write_html(document, {}).find("<svg") == std::string::npos);
}

TEST_CASE("a list of boxes is there to be ticked in every format") {
    BulletList list;
    list.boxes = true;
    list.items = {"weigh", "stir"};
    Document document;
    document.blocks.push_back(list);
    CHECK(write_terminal(document, {}).find("[ ] weigh\n[ ] stir") != std::string::npos);
    CHECK(write_markdown(document, {}).find("- [ ] weigh\n- [ ] stir") != std::string::npos);
    CHECK(write_html(document, {}).find("<ul class=\"boxes\">") != std::string::npos);
}

TEST_CASE("XML escapes text and attributes and keeps mixed content on one line") {
    const Xml root = Xml::element("a", {{"b", "\"<&>\""}}, {Xml::leaf("c", "1 < 2 & 3"), Xml::element("d")});
    CHECK(write_xml(root) == "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                             "<a b=\"&quot;&lt;&amp;&gt;&quot;\">\n"
                             "  <c>1 &lt; 2 &amp; 3</c>\n"
                             "  <d/>\n"
                             "</a>\n");
    const Xml mixed = Xml::element("p", {}, {Xml::element("i"), Xml::words(" mmol")});
    CHECK(write_xml(mixed).find("<p><i/> mmol</p>") != std::string::npos);
    // A control character has no place in XML.
    CHECK(write_xml(Xml::leaf("a", "x\x01y")).find('\x01') == std::string::npos);
}

} // namespace
} // namespace routeweigh::writing
