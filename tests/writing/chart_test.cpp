// SPDX-License-Identifier: MIT
#include "writing/chart_table.hpp"
#include "writing/chart_text.hpp"
#include "writing/hostile.hpp"
#include "writing/reading_back.hpp"
#include "writing/sample_document.hpp"
#include "writing/svg/axis.hpp"
#include "writing/svg/draw.hpp"
#include "writing/svg/graph_layers.hpp"
#include "writing/svg/graph_layout.hpp"
#include "writing/svg/ribbon_layout.hpp"
#include "writing/utf8.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace routeweigh::writing;

namespace {

std::vector<Chart> sample_charts() {
    return {sample_bars(),      sample_ribbons(), sample_grid(),
            sample_intervals(), sample_curve(),   sample_graph()};
}

void check_labels(const Canvas& canvas) {
    const auto& labels = canvas.labels();
    for (std::size_t i = 0; i < labels.size(); ++i) {
        CAPTURE(labels[i].text);
        CHECK(labels[i].x >= -0.5);
        CHECK(labels[i].x + labels[i].width <= canvas.width() + 0.5);
        CHECK(labels[i].y >= -0.5);
        CHECK(labels[i].y + labels[i].height <= canvas.height() + 0.5);
        for (std::size_t j = i + 1; j < labels.size(); ++j) {
            CAPTURE(labels[j].text);
            CHECK_FALSE(overlap(labels[i], labels[j]));
        }
    }
}

Ribbons random_ribbons(std::mt19937& random) {
    std::uniform_int_distribution<int> flows(1, 9);
    std::uniform_int_distribution<int> letters(3, 60);
    std::lognormal_distribution<double> mass(0, 2);
    Ribbons chart;
    chart.unit = "g";
    const auto side = [&] {
        std::vector<Ribbons::Flow> list(static_cast<std::size_t>(flows(random)));
        for (auto& flow : list) {
            flow.mass = mass(random);
            flow.label = std::string(static_cast<std::size_t>(letters(random)), 'm');
        }
        return list;
    };
    for (int step = flows(random) % 4; step >= 0; --step)
        chart.steps.push_back({"step", side(), side()});
    return chart;
}

Graph random_graph(std::mt19937& random) {
    std::uniform_int_distribution<int> count(1, 8);
    Graph graph;
    const int boxes = count(random) + 3;
    const int squares = count(random);
    for (int i = 0; i < boxes; ++i)
        graph.boxes.push_back({"substance number " + std::to_string(i), static_cast<Graph::Style>(i % 5)});
    for (int i = 0; i < squares; ++i) {
        graph.squares.push_back({"R" + std::to_string(i + 1)});
        for (int k = count(random) % 5; k >= 0; --k) {
            graph.arrows.push_back({static_cast<int>(random() % static_cast<unsigned>(boxes)), i,
                                    random() % 2 == 0, k == 1 ? "2" : ""});
        }
    }
    return graph;
}

} // namespace

TEST_CASE("every picture is well-formed and names itself for those who cannot see it") {
    for (const double width : {picture_width, phone_width}) {
        for (const Chart& chart : sample_charts()) {
            const Markup svg = read_markup(draw_chart(chart, "f", width).svg("the title", "the description"));
            REQUIRE(svg.tags.size() > 4);
            CHECK(svg.tags[0].name == "svg");
            CHECK(svg.tags[0].attribute("role") == "img");
            CHECK(svg.tags[0].attribute("aria-labelledby") == "f-title f-desc");
            CHECK(svg.tags[1].name == "title");
            CHECK(svg.tags[3].name == "desc");
            CHECK(svg.text.find("the description") != std::string::npos);
        }
    }
}

TEST_CASE("labels of the sample pictures neither overlap nor leave the picture") {
    for (const double width : {picture_width, phone_width}) {
        for (const Chart& chart : sample_charts()) {
            CAPTURE(chart.index());
            CAPTURE(width);
            check_labels(draw_chart(chart, "f", width));
        }
    }
}

TEST_CASE("labels of ribbons never overlap, whatever the masses and names") {
    std::mt19937 random(20240501);
    for (int i = 0; i < 60; ++i)
        check_labels(draw(random_ribbons(random), "f", i % 2 == 0 ? picture_width : phone_width));
}

TEST_CASE("the widths of ribbons are the masses times one scale, at both ends and for all steps") {
    std::mt19937 random(7);
    for (int i = 0; i < 60; ++i) {
        const Ribbons chart = random_ribbons(random);
        const RibbonLayout layout = layout_ribbons(chart, picture_width);
        REQUIRE(layout.panels.size() == chart.steps.size());
        REQUIRE(layout.scale > 0);
        for (std::size_t step = 0; step < chart.steps.size(); ++step) {
            const RibbonPanel& panel = layout.panels[step];
            for (const bool input : {true, false}) {
                const auto& flows = input ? chart.steps[step].inputs : chart.steps[step].outputs;
                const auto& bands = input ? panel.inputs : panel.outputs;
                REQUIRE(bands.size() == flows.size());
                double inner = panel.block_top;
                double outer = 0;
                for (std::size_t k = 0; k < bands.size(); ++k) {
                    CHECK(bands[k].width == doctest::Approx(flows[k].mass * layout.scale));
                    CHECK(bands[k].inner_top ==
                          doctest::Approx(inner));      // side by side on the block, without a gap
                    CHECK(bands[k].outer_top >= outer); // apart at the margin
                    inner += bands[k].width;
                    outer = bands[k].outer_top + bands[k].width;
                }
                CHECK(inner <= panel.block_top + panel.block_height + 1e-6);
            }
        }
    }
}

TEST_CASE("a balanced step fills its block on both sides") {
    Ribbons chart;
    chart.steps = {{"step", {{"a", 3}, {"b", 7}}, {{"c", 9.5}, {"d", 0.5}}}};
    const RibbonPanel panel = layout_ribbons(chart, picture_width).panels[0];
    for (const auto* bands : {&panel.inputs, &panel.outputs}) {
        CHECK(bands->back().inner_top + bands->back().width ==
              doctest::Approx(panel.block_top + panel.block_height));
    }
}

TEST_CASE("squares run in an order in which their boxes are made, and regenerated boxes point upwards") {
    const Graph graph = sample_graph();
    CHECK(running_order(graph) == std::vector<std::size_t>{0, 1});
    const GraphLayout layout = layout_graph(graph, picture_width);
    CHECK(layout.squares[0].y < layout.squares[1].y);
    for (std::size_t i = 0; i < graph.arrows.size(); ++i) {
        const bool regenerated =
            graph.arrows[i].square == 1 && !graph.arrows[i].into_square && graph.arrows[i].box == 1;
        CHECK(layout.arrows[i].upwards == regenerated);
        const double tail = layout.arrows[i].points.front().y;
        const double head = layout.arrows[i].points.back().y;
        CHECK((head > tail) == !regenerated);
    }
}

TEST_CASE("boxes and squares of any graph stand apart and inside the picture") {
    std::mt19937 random(11);
    for (int i = 0; i < 80; ++i) {
        const Graph graph = random_graph(random);
        const GraphLayout layout = layout_graph(graph, picture_width);
        std::vector<LabelBox> boxes;
        for (const auto* nodes : {&layout.boxes, &layout.squares}) {
            for (const PlacedNode& node : *nodes) {
                boxes.push_back(
                    {node.x - node.width / 2, node.y - node.height / 2, node.width, node.height, ""});
                CHECK(boxes.back().x >= 0);
                CHECK(boxes.back().x + boxes.back().width <= layout.width);
                CHECK(boxes.back().y >= 0);
                CHECK(boxes.back().y + boxes.back().height <= layout.height);
            }
        }
        for (std::size_t a = 0; a < boxes.size(); ++a) {
            for (std::size_t b = a + 1; b < boxes.size(); ++b)
                CHECK_FALSE(overlap(boxes[a], boxes[b]));
        }
        // Each arrow starts and ends at the rim of its own box and square.
        for (std::size_t k = 0; k < graph.arrows.size(); ++k) {
            const auto& arrow = layout.arrows[k];
            REQUIRE(arrow.points.size() >= 2);
            const PlacedNode& box = layout.boxes[static_cast<std::size_t>(graph.arrows[k].box)];
            const auto& end = graph.arrows[k].into_square ? arrow.points.front() : arrow.points.back();
            CHECK(std::abs(end.y - box.y) == doctest::Approx(box.height / 2));
            CHECK(std::abs(end.x - box.x) <= box.width / 2);
        }
    }
}

TEST_CASE("labels of graphs neither overlap nor leave the picture") {
    std::mt19937 random(5);
    for (int i = 0; i < 80; ++i)
        check_labels(draw(random_graph(random), "f", i % 2 == 0 ? picture_width : phone_width));
}

TEST_CASE("labels of bars, intervals and grids with many and long names do not overlap") {
    std::mt19937 random(3);
    const auto name = [&] {
        std::string words;
        for (auto left = 1 + random() % 9; left > 0; --left)
            words += std::string(1 + random() % 14, 'n') + " ";
        return words;
    };
    for (int i = 0; i < 40; ++i) {
        StackedBars bars{"g", {}, {}};
        Intervals intervals{"mass", "g", {}, i % 3 == 0};
        DecadeGrid grid{"decades", {}, {}};
        for (auto left = 1 + random() % 8; left > 0; --left)
            bars.series.push_back({name(), random() % 4 == 0});
        for (auto left = 1 + random() % 12; left > 0; --left) {
            std::vector<double> values;
            for (std::size_t k = 0; k < bars.series.size(); ++k)
                values.push_back(static_cast<double>(random() % 5000) / 7.0);
            bars.bars.push_back(
                {name(), values, left == 2, i % 2 == 0 ? "" : "group " + std::to_string(left / 2)});
            const double low = static_cast<double>(random() % 1000 + 1);
            intervals.items.push_back({name(), low * 1.5, low, low * 3, left == 3, left == 2});
            grid.columns.push_back({"A" + std::to_string(left), left == 2,
                                    i % 2 == 0 ? "" : "route " + std::to_string(left / 3)});
        }
        for (int row = 0; row < 9; ++row) {
            grid.rows.push_back({name(), name(), {}});
            for (std::size_t k = 0; k < grid.columns.size(); ++k) {
                const double decades = static_cast<double>(random() % 70) / 10;
                grid.rows.back().cells.push_back({static_cast<DecadeGrid::State>(random() % 4), decades,
                                                  std::to_string(random() % 100000)});
            }
        }
        for (const double width : {picture_width, phone_width}) {
            check_labels(draw(bars, "f", width));
            check_labels(draw(intervals, "f", width));
            check_labels(draw(grid, "f", width));
        }
    }
}

TEST_CASE("pictures of nothing, of zeros and of one thing are drawn") {
    const double nan = std::nan("");
    const std::vector<Chart> charts = {
        StackedBars{},
        StackedBars{"g", {{"a"}}, {{"x", {0}}, {"y", {}}, {"z", {-1}}, {"w", {nan}}}},
        Ribbons{},
        Ribbons{"g", {{"s", {}, {}}, {"t", {{"a", 0}}, {{"b", nan}}}}},
        DecadeGrid{},
        DecadeGrid{"d", {{"c"}}, {{"r", "", {}}}},
        Intervals{},
        Intervals{"q", "u", {{"none", {}, {}, {}}}},
        Intervals{"q", "u", {{"one", 3.0, {}, {}}}, true},
        Intervals{"q", "u", {{"no number", nan, nan, nan}}},
        Curve{},
        Curve{{}, {}, {{"point", {{1, 1}}}}, {{{nan, nan}, "m"}}},
        Graph{},
        Graph{{{"lonely"}}, {{"R"}}, {{7, 7, true, ""}, {0, -1, true, ""}}, {}}};
    for (const Chart& chart : charts) {
        for (const double width : {picture_width, phone_width}) {
            const std::string svg = draw_chart(chart, "f", width).svg("t", "d");
            CAPTURE(svg);
            CHECK_NOTHROW(read_markup(svg));
            CHECK(svg.find("nan") == std::string::npos);
            CHECK(svg.find("inf\"") == std::string::npos);
        }
        CHECK_NOTHROW(chart_table(chart));
        for (const std::string& line : chart_text(chart, 80, {}))
            CHECK(display_width(line) <= 80);
    }
}

TEST_CASE("the table of a chart holds the chart's numbers") {
    const Table bars = chart_table(sample_bars());
    CHECK(bars.rows[0].cells[1].number == 2.6);
    CHECK(*bars.rows[0].cells.back().number == doctest::Approx(2.6 + 0.9 + 9.3 + 12.4 + 30.6));
    const Table grid = chart_table(sample_grid());
    CHECK(grid.rows[0].cells[2].text == "1690");
    CHECK(grid.rows[0].cells[7].mark == Mark::at_least);
    CHECK(grid.rows[1].cells[7].note == "unassessed: no data");
    const Table graph = chart_table(sample_graph());
    CHECK(graph.rows[0].cells[1].text == "hydrogen peroxide + 2 hydrogen bromide");
    CHECK(graph.rows[1].cells[2].text == "4-bromoacetanilide + hydrogen bromide");
}

TEST_CASE("ticks are round numbers inside the range") {
    CHECK(linear_ticks(0, 214, 5) == std::vector<double>{0, 50, 100, 150, 200});
    CHECK(linear_ticks(0, 0, 5).size() == 1);
    CHECK(logarithmic_ticks(0.9, 210) == std::vector<double>{1, 2, 5, 10, 20, 50, 100, 200});
}

TEST_CASE("lettering stands out from its ground at a contrast of 4.5 to 1 or more") {
    // Relative luminance and contrast ratio as WCAG 2.1 defines them (formula from memory).
    const auto luminance = [](std::string_view colour) {
        double sum = 0;
        const double weights[] = {0.2126, 0.7152, 0.0722};
        for (std::size_t i = 0; i < 3; ++i) {
            const double share = std::stoi(std::string(colour.substr(1 + 2 * i, 2)), nullptr, 16) / 255.0;
            sum += weights[i] * (share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4));
        }
        return sum;
    };
    const auto contrast = [&](std::string_view a, std::string_view b) {
        const double one = luminance(a);
        const double two = luminance(b);
        return (std::max(one, two) + 0.05) / (std::min(one, two) + 0.05);
    };
    CHECK(contrast("#000000", "#ffffff") == doctest::Approx(21));
    for (const std::string_view letters :
         {palette::ink, palette::quiet, palette::accent, palette::blues[1]}) {
        CHECK(contrast(letters, palette::paper) >= 4.5);
        CHECK(contrast(letters, "#f4f6f8") >= 4.5); // the ground of the baseline's column
    }
    for (std::size_t step = 0; step < palette::blues.size(); ++step) {
        CHECK(contrast(palette::lettering_on(step), palette::blues[step]) >= 4.5);
        if (step > 0) CHECK(luminance(palette::blues[step]) > luminance(palette::blues[step - 1]));
    }
}
