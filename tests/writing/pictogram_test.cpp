// SPDX-License-Identifier: MIT
#include "reading_back.hpp"

#include "writing/html_writer.hpp"
#include "writing/markdown_writer.hpp"
#include "writing/svg/pictogram.hpp"
#include "writing/terminal_writer.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <iterator>
#include <set>
#include <string>
#include <utility>

using namespace routeweigh::writing;

// Codes and names: UN GHS Annex 1 and CLP Annex V (remembered).
TEST_CASE("the nine pictograms bear the codes and the names of the standard") {
    const std::pair<std::string_view, std::string_view> standard[] = {
        {"GHS01", "exploding bomb"},   {"GHS02", "flame"},         {"GHS03", "flame over circle"},
        {"GHS04", "gas cylinder"},     {"GHS05", "corrosion"},     {"GHS06", "skull and crossbones"},
        {"GHS07", "exclamation mark"}, {"GHS08", "health hazard"}, {"GHS09", "environment"}};
    REQUIRE(pictogram_list().size() == std::size(standard));
    for (std::size_t i = 0; i < std::size(standard); ++i) {
        CHECK(pictogram_list()[i].code == standard[i].first);
        CHECK(pictogram_list()[i].name == standard[i].second);
        CHECK(find_pictogram(standard[i].first) == &pictogram_list()[i]);
    }
    CHECK(find_pictogram("GHS10") == nullptr);
    CHECK(pictogram_words("GHS10") == "GHS10");
}

TEST_CASE("each pictogram is a black symbol in a red frame and names itself for those who cannot see it") {
    std::set<std::string_view> symbols;
    for (const Pictogram& pictogram : pictogram_list()) {
        CAPTURE(pictogram.code);
        const Markup svg = read_markup(pictogram_svg(pictogram, "p", 40));
        CHECK(svg.tags[0].attribute("role") == "img");
        CHECK(svg.tags[0].attribute("width") == "40");
        CHECK(svg.tags[0].attribute("aria-labelledby") == "p-title p-desc");
        CHECK(svg.text.find(pictogram.name) != std::string::npos);
        CHECK(svg.text.find(pictogram.shows) != std::string::npos);
        std::size_t shapes = 0, frames = 0;
        for (const Tag& tag : svg.tags) {
            shapes += tag.name == "path" || tag.name == "circle" ? 1U : 0U;
            frames += tag.attribute("stroke") == "#d4141c" ? 1U : 0U;
            const std::string fill = tag.attribute("fill");
            CHECK((fill.empty() || fill == "#000" || fill == "#fff" || fill == "none"));
        }
        CHECK(frames == 1);
        CHECK(shapes >= 2);
        CHECK(symbols.insert(pictogram.symbol).second); // no two alike
    }
}

TEST_CASE("a row of pictograms is drawn where a writer can draw and named where it cannot") {
    Document document;
    document.blocks.emplace_back(Pictograms{{"GHS05", "<GHS99>"}});
    const Markup page = read_markup(write_html(document, {}));
    CHECK(std::count_if(page.tags.begin(), page.tags.end(),
                        [](const Tag& tag) { return tag.name == "svg" && !tag.closes; }) == 1);
    CHECK(page.text.find("<GHS99>") != std::string::npos);
    CHECK(write_terminal(document, {}).find("Pictograms: GHS05 corrosion, <GHS99>") != std::string::npos);
    CHECK(write_markdown(document, {}).find("GHS05 corrosion") != std::string::npos);
}
