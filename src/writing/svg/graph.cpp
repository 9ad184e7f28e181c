// SPDX-License-Identifier: MIT
#include "writing/svg/draw.hpp"
#include "writing/svg/graph_layout.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::writing {
namespace {

Paint box_paint(Graph::Style style) {
    switch (style) {
    case Graph::Style::plain:
    case Graph::Style::start:
        break;
    case Graph::Style::transient:
        return {.fill = palette::paper, .stroke = palette::blues[0], .stroke_width = 1.6, .dash = "5 3.5"};
    case Graph::Style::side:
        return {.fill = palette::paper};
    case Graph::Style::goal:
        return {.fill = palette::blues[5], .stroke = palette::blues[0], .stroke_width = 2.6};
    }
    return {.fill = palette::paper, .stroke = palette::blues[1], .stroke_width = 1.1};
}

void draw_box_outline(Canvas& canvas, Graph::Style style, double x, double y, double width, double height) {
    const double left = x - width / 2;
    const double top = y - height / 2;
    canvas.rect(left, top, width, height, box_paint(style), style == Graph::Style::start ? 0 : 8);
    if (style == Graph::Style::side) {
        canvas.line(left + 4, top + height, left + width - 4, top + height,
                    {.stroke = palette::blues[1], .stroke_width = 1.1});
    }
}

std::string curve_through(const std::vector<PlacedArrow::Point>& points) {
    std::string data = fmt::format("M{:.2f} {:.2f}", points[0].x, points[0].y);
    for (std::size_t i = 1; i < points.size(); ++i) {
        const auto& a = points[i - 1];
        const auto& b = points[i];
        const double middle = (a.y + b.y) / 2;
        data +=
            fmt::format(" C{:.2f} {:.2f} {:.2f} {:.2f} {:.2f} {:.2f}", a.x, middle, b.x, middle, b.x, b.y);
    }
    return data;
}

/// Near the end at the square, but not on it; moved along the arrow while another label is in the way.
void draw_coefficient(Canvas& canvas, const PlacedArrow& arrow, bool into_square, const std::string& words) {
    if (words.empty() || arrow.points.size() < 2) return;
    const std::size_t last = arrow.points.size() - 1;
    const auto& at_square = into_square ? arrow.points[last] : arrow.points[0];
    const auto& away = into_square ? arrow.points[last - 1] : arrow.points[1];
    const Lettering lettering{.size = 10.5, .anchor = Anchor::middle, .bold = true, .halo = true};
    for (const double share : {0.5, 0.38, 0.62, 0.3, 0.7}) {
        // The curve has its ends upright, so its height at parameter t is not linear; this is the cubic
        // itself.
        const double bend = share * share * (3 - 2 * share);
        const double x = at_square.x + (away.x - at_square.x) * bend;
        const double rise = 3 * share * (1 - share) * 0.5 + share * share * share;
        const double y = at_square.y + (away.y - at_square.y) * rise + 3.5;
        const double width = text_width(words, lettering.size, true);
        const LabelBox wanted{x - width / 2, y - 0.8 * lettering.size, width, lettering.size, words};
        const bool taken = std::any_of(canvas.labels().begin(), canvas.labels().end(),
                                       [&](const LabelBox& other) { return overlap(wanted, other); });
        if (taken && share != 0.7) continue;
        canvas.text(x, y, words, lettering);
        return;
    }
}

void draw_keys(Canvas& canvas, const Graph& chart, double least_width, double y) {
    double x = 0;
    const auto room = [&](double width) {
        if (x > 0 && x + width > least_width) {
            x = 0;
            y += 22;
        }
    };
    const Lettering small{.size = 10.5, .fill = palette::quiet};
    for (const auto& key : chart.keys) {
        const double width = 34 + text_width(key.meaning, 10.5) + 18;
        room(width);
        draw_box_outline(canvas, key.style, x + 13, y + 7, 24, 14);
        canvas.text(x + 32, y + 11, key.meaning, small);
        x += width;
    }
    canvas.grow_height(y + 20);
}

} // namespace

Canvas draw(const Graph& chart, const std::string& name, double width) {
    const GraphLayout layout = layout_graph(chart, width);
    Canvas canvas(name, layout.width);
    for (const PlacedArrow& arrow : layout.arrows) {
        if (arrow.points.size() < 2) continue;
        canvas.path(curve_through(arrow.points),
                    {.stroke = palette::quiet, .stroke_width = 1.2, .arrow = true});
    }
    for (std::size_t i = 0; i < layout.boxes.size(); ++i) {
        const PlacedNode& box = layout.boxes[i];
        draw_box_outline(canvas, chart.boxes[i].style, box.x, box.y, box.width, box.height);
        double line = box.y - 13.5 * static_cast<double>(box.label.size()) / 2 + 10.5;
        for (const std::string& words : box.label) {
            canvas.text(
                box.x, line, words,
                {.size = 11.5, .anchor = Anchor::middle, .bold = chart.boxes[i].style == Graph::Style::goal});
            line += 13.5;
        }
    }
    for (const PlacedNode& square : layout.squares) {
        canvas.rect(square.x - square.width / 2, square.y - square.height / 2, square.width, square.height,
                    {.fill = palette::blues[1]});
        canvas.text(square.x, square.y + 4, square.label.empty() ? "" : square.label[0],
                    {.size = 10.5, .fill = palette::paper, .anchor = Anchor::middle, .bold = true});
    }
    for (std::size_t i = 0; i < layout.arrows.size(); ++i) {
        draw_coefficient(canvas, layout.arrows[i], chart.arrows[i].into_square, chart.arrows[i].coefficient);
    }
    draw_keys(canvas, chart, width, layout.height + 14);
    canvas.grow_height(layout.height);
    return canvas;
}

} // namespace routeweigh::writing
