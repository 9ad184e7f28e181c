// SPDX-License-Identifier: MIT
#include "writing/html_writer.hpp"
#include "writing/markdown_writer.hpp"
#include "writing/reading_back.hpp"
#include "writing/sample_document.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace routeweigh::writing;

namespace {

Markup sample_page() {
    static const Markup page = read_markup(write_html(sample_document(), {}));
    return page;
}

std::size_t count(const Markup& page, const std::string& name) {
    return static_cast<std::size_t>(std::count_if(
        page.tags.begin(), page.tags.end(), [&](const Tag& tag) { return tag.name == name && !tag.closes; }));
}

} // namespace

TEST_CASE("a page loads nothing, runs nothing and says its language and viewport") {
    const std::string html = write_html(sample_document(), {});
    CHECK(html.substr(0, 15) == "<!DOCTYPE html>");
    CHECK(html.find("url(http") == std::string::npos);
    CHECK(html.find("@import") == std::string::npos);
    const Markup page = sample_page();
    CHECK(page.tags[0].attribute("lang") == "en");
    for (const Tag& tag : page.tags) {
        CHECK(tag.name != "script");
        CHECK(tag.name != "link");
        CHECK(tag.name != "img");
    }
    const bool viewport = std::any_of(page.tags.begin(), page.tags.end(),
                                      [](const Tag& tag) { return tag.attribute("name") == "viewport"; });
    CHECK(viewport);
}

TEST_CASE("where a hand writes there is room for it, in running text and in tables") {
    Document document;
    document.title = "Sheet";
    document.blocks.push_back(Paragraph{{"Yield: " + std::string(blank) + "\u00A0g"}});
    Table table;
    table.columns = {{.heading = "what"}, {.heading = "found"}};
    table.rows.push_back({"mass", std::string(blank)});
    document.blocks.push_back(table);
    const Markup page = read_markup(write_html(document, {}));
    CHECK(std::count_if(page.tags.begin(), page.tags.end(),
                        [](const Tag& tag) { return tag.attribute("class") == "blank"; }) == 2);
    // A number written by hand takes 20 mm (common practice, no source).
    CHECK(write_html(document, {}).find(".blank { display: inline-block; min-width: 20.3mm;") !=
          std::string::npos);
}

TEST_CASE("every id is used once and every link leads to one") {
    const Markup page = sample_page();
    std::set<std::string> ids;
    for (const Tag& tag : page.tags) {
        const std::string id = tag.attribute("id");
        if (!id.empty()) CHECK(ids.insert(id).second);
    }
    for (const Tag& tag : page.tags) {
        const std::string href = tag.attribute("href");
        if (!href.empty()) CHECK(ids.count(href.substr(1)) == 1);
        const std::string labels = tag.attribute("aria-labelledby");
        if (!labels.empty()) CHECK(ids.count(labels.substr(0, labels.find(' '))) == 1);
    }
}

TEST_CASE("tables have headers with scope, pictures have a title and a description") {
    const Markup page = sample_page();
    for (std::size_t i = 0; i < page.tags.size(); ++i) {
        const Tag& tag = page.tags[i];
        if (tag.name == "th" && !tag.closes) CHECK_FALSE(tag.attribute("scope").empty());
        if (tag.name == "svg" && !tag.closes) {
            CHECK(tag.attribute("role") == "img");
            CHECK(page.tags[i + 1].name == "title");
            CHECK(page.tags[i + 3].name == "desc");
        }
    }
    CHECK(count(page, "figure") == 6);
    CHECK(count(page, "svg") == 12 + 3); // each once for pages and once for phones, and three pictograms
    CHECK(count(page, "figcaption") == 6);
    CHECK(count(page, "h1") == 1);
    CHECK(count(page, "main") == 1);
}

TEST_CASE("a table too wide for paper is also there in parts for printing") {
    Document document;
    Table table;
    table.columns = {{"figure"}};
    Row row{"a"};
    for (int i = 0; i < 40; ++i) {
        table.columns.push_back({"R" + std::to_string(i), Align::decimal});
        row.cells.push_back(Cell("1234.56", 1234.56));
    }
    table.rows = {row};
    document.blocks = {table};
    const Markup page = read_markup(write_html(document, {}));
    CHECK(count(page, "table") >= 4);
    CHECK(count(page, "td") == 80);
    table.columns.resize(5);
    document.blocks = {table};
    CHECK(count(read_markup(write_html(document, {})), "table") == 1);
}

TEST_CASE("Markdown has the tables of pictures, their text and the folded blocks") {
    const std::string text = write_markdown(sample_document(), {});
    CHECK(text.find("# Two ways to 4-bromoacetanilide") == 0);
    CHECK(text.find("| A4, cerium ammonium nitrate | 3.20 | 14.4 |") != std::string::npos);
    CHECK(text.find("The curve of A3 crosses the line of A1 at 84 %.") != std::string::npos);
    CHECK(text.find("<summary>Working of the atom economy of A3</summary>") != std::string::npos);
    CHECK(text.find("`214.06 / (135.17 + 80.91 + 34.01) = 0.8559`") != std::string::npos);
}
