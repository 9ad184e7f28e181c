// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"
#include "writing/svg/draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {
namespace {

constexpr double row_label = 150;
constexpr double row_height = 54;
constexpr double largest_side = 30;
constexpr double text_size = 10.5;

double most_decades(const DecadeGrid& chart) {
    double most = 3;
    for (const auto& row : chart.rows) {
        for (const auto& cell : row.cells)
            most = std::max(most, std::ceil(drawable(cell.decades)));
    }
    return most;
}

/// Darker with every decade; the side carries the same in grey.
std::string_view shade(double decades, double most) {
    const auto last = static_cast<double>(palette::blues.size()) - 2;
    const double share = most > 0 ? std::clamp(decades / most, 0.0, 1.0) : 0;
    return palette::blues[static_cast<std::size_t>(std::lround(last - share * last))];
}

/// The square for a lower bound is open to the upper right, where an arrow leaves it.
void draw_mark(Canvas& canvas, DecadeGrid::State state, double decades, double most, double x, double y) {
    const double side = std::max(drawable(decades) / most * largest_side, 2.0);
    const double left = x - side / 2;
    const double top = y - side / 2;
    switch (state) {
    case DecadeGrid::State::value:
        canvas.rect(left, top, side, side,
                    {.fill = shade(decades, most), .stroke = palette::blues[0], .stroke_width = 0.7});
        break;
    case DecadeGrid::State::at_least:
        canvas.rect(left, top, side, side, {.fill = shade(decades, most)});
        canvas.path(fmt::format("M{:.2f} {:.2f} V{:.2f} H{:.2f}", left, top, top + side, left + side),
                    {.stroke = palette::blues[0], .stroke_width = 1.6});
        canvas.line(left + side - 2, top + 2, left + side + 7, top - 7,
                    {.stroke = palette::quiet, .stroke_width = 1.4, .arrow = true});
        break;
    case DecadeGrid::State::unassessed:
        canvas.rect(x - 9, y - 9, 18, 18,
                    {.fill = palette::paper, .stroke = palette::quiet, .dash = "3 2.5"});
        canvas.text(x, y + 4, "?", {.size = 12, .fill = palette::quiet, .anchor = Anchor::middle});
        break;
    case DecadeGrid::State::zero:
        canvas.line(x - 5, y, x + 5, y, {.stroke = palette::quiet, .stroke_width = 1.4});
        break;
    }
}

void draw_legend(Canvas& canvas, const DecadeGrid& chart, double most, double y) {
    const Lettering small{.size = text_size, .fill = palette::quiet};
    canvas.text(0, y + 4, chart.measure, small);
    double x = text_width(chart.measure, text_size) + 30;
    for (int decades = 1; decades <= static_cast<int>(most); ++decades) {
        draw_mark(canvas, DecadeGrid::State::value, decades, most, x, y);
        canvas.text(x, y + 29, fmt::format("{}", decades),
                    {.size = text_size, .fill = palette::quiet, .anchor = Anchor::middle});
        x += 40;
    }
    y += 52;
    x = 14;
    static constexpr std::pair<DecadeGrid::State, std::string_view> meanings[] = {
        {DecadeGrid::State::at_least, "no upper bound is known"},
        {DecadeGrid::State::unassessed, "unassessed: no data"},
        {DecadeGrid::State::zero, "assessed, nothing"},
    };
    for (const auto& [state, meaning] : meanings) {
        draw_mark(canvas, state, most * 0.5, most, x, y);
        canvas.text(x + 20, y + 4, meaning, small);
        x += 20 + text_width(meaning, text_size) + 34;
    }
}

} // namespace

Canvas draw(const DecadeGrid& chart, const std::string& name) {
    const double most = most_decades(chart);
    const auto columns = static_cast<double>(std::max<std::size_t>(chart.columns.size(), 1));
    double widest_text = 0;
    for (const auto& row : chart.rows) {
        for (const auto& cell : row.cells)
            widest_text = std::max(widest_text, text_width(cell.text, text_size) + 20);
    }
    const double room = (picture_width - row_label - 10) / columns;
    const double column_width = std::max({std::min(room, 120.0), widest_text + 6, 46.0});
    Canvas canvas(name, std::max(picture_width, row_label + 10 + columns * column_width));
    const double left = row_label + 10;
    const auto center = [&](std::size_t column) {
        return left + (static_cast<double>(column) + 0.5) * column_width;
    };

    const bool grouped = std::any_of(chart.columns.begin(), chart.columns.end(),
                                     [](const auto& column) { return !column.group.empty(); });
    double y = 0;
    if (grouped) {
        for (std::size_t first = 0; first < chart.columns.size();) {
            std::size_t next = first + 1;
            while (next < chart.columns.size() && chart.columns[next].group == chart.columns[first].group)
                ++next;
            const double middle = (center(first) + center(next - 1)) / 2;
            const double span = static_cast<double>(next - first) * column_width;
            const bool baseline = chart.columns[first].baseline;
            double line = 12;
            for (const std::string& words : wrap_measured(chart.columns[first].group, span - 8, 11.5, true)) {
                canvas.text(middle, line, words,
                            {.size = 11.5,
                             .fill = baseline ? palette::accent : palette::ink,
                             .anchor = Anchor::middle,
                             .bold = true});
                y = std::max(y, line + 6);
                line += 13;
            }
            first = next;
        }
        for (std::size_t first = 0; first < chart.columns.size();) {
            std::size_t next = first + 1;
            while (next < chart.columns.size() && chart.columns[next].group == chart.columns[first].group)
                ++next;
            canvas.line(center(first) - column_width / 2 + 4, y, center(next - 1) + column_width / 2 - 4, y,
                        {.stroke = palette::quiet});
            first = next;
        }
    }
    double head_bottom = y;
    for (std::size_t i = 0; i < chart.columns.size(); ++i) {
        double line = y + 13;
        std::vector<std::string> words = wrap_measured(chart.columns[i].label, column_width - 6, 11.5);
        if (chart.columns[i].baseline && !grouped) words.emplace_back("baseline");
        for (const std::string& piece : words) {
            canvas.text(center(i), line, piece,
                        {.size = piece == "baseline" ? 10 : 11.5,
                         .fill = chart.columns[i].baseline ? palette::accent : palette::ink,
                         .anchor = Anchor::middle,
                         .bold = chart.columns[i].baseline});
            head_bottom = std::max(head_bottom, line + 7);
            line += 13;
        }
    }
    y = head_bottom;
    const double right = left + columns * column_width;
    for (const auto& row : chart.rows) {
        canvas.line(0, y, right, y, {.stroke = palette::rule, .stroke_width = 0.8});
        double line = y + 19;
        for (const std::string& words : wrap_measured(row.label, row_label, 12)) {
            canvas.text(0, line, words, {.size = 12});
            line += 13.5;
        }
        for (const std::string& words : wrap_measured(row.unit, row_label, 10)) {
            if (!words.empty()) canvas.text(0, line - 1, words, {.size = 10, .fill = palette::quiet});
            line += 11.5;
        }
        for (std::size_t i = 0; i < row.cells.size() && i < chart.columns.size(); ++i) {
            const auto& cell = row.cells[i];
            draw_mark(canvas, cell.state, cell.decades, most, center(i), y + 20);
            const std::string words =
                cell.state == DecadeGrid::State::at_least ? "\u2265 " + cell.text : cell.text;
            canvas.text(center(i), y + 48, words, {.size = text_size, .anchor = Anchor::middle});
        }
        y = std::max(y + row_height, line - 4);
    }
    canvas.line(0, y, right, y, {.stroke = palette::rule, .stroke_width = 0.8});
    draw_legend(canvas, chart, most, y + 26);
    canvas.grow_height(y + 98);
    return canvas;
}

} // namespace routeweigh::writing
