// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"
#include "writing/svg/draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {
namespace {

constexpr double row_label = 150;
constexpr double row_height = 55;
constexpr double largest_side = 28;
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

/// A lower bound has an arrow out of its upper right corner.
void draw_upwards_arrow(Canvas& canvas, double x, double y) {
    const Paint pen{.stroke = palette::ink, .stroke_width = 1.3};
    canvas.line(x + 1.5, y - 1.5, x + 8, y - 8, pen);
    canvas.path(fmt::format("M{:.2f} {:.2f} H{:.2f} V{:.2f}", x + 3.5, y - 8, x + 8, y - 3.5), pen);
}

void draw_mark(Canvas& canvas, DecadeGrid::State state, double decades, double most, double x, double y) {
    const double side = std::max(drawable(decades) / most * largest_side, 2.5);
    switch (state) {
    case DecadeGrid::State::value:
    case DecadeGrid::State::at_least:
        canvas.rect(x - side / 2, y - side / 2, side, side,
                    {.fill = shade(decades, most), .stroke = palette::blues[0], .stroke_width = 0.7});
        if (state == DecadeGrid::State::at_least) draw_upwards_arrow(canvas, x + side / 2, y - side / 2);
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

void draw_legend(Canvas& canvas, const DecadeGrid& chart, double most, double width, double y) {
    const Lettering small{.size = text_size, .fill = palette::quiet};
    const double measure_width = text_width(chart.measure, text_size);
    const bool one_line = measure_width + 30 + 40 * most <= width;
    canvas.text(0, one_line ? y + 4 : y - 8, chart.measure, small);
    double x = one_line ? measure_width + 30 : 16;
    if (!one_line) y += 20;
    for (int decades = 1; decades <= static_cast<int>(most); ++decades) {
        draw_mark(canvas, DecadeGrid::State::value, decades, most, x, y);
        canvas.text(x, y + 29, fmt::format("{}", decades),
                    {.size = text_size, .fill = palette::quiet, .anchor = Anchor::middle});
        x += 40;
    }
    y += 52;
    x = 16;
    static constexpr std::pair<DecadeGrid::State, std::string_view> meanings[] = {
        {DecadeGrid::State::at_least, "no upper bound is known"},
        {DecadeGrid::State::unassessed, "unassessed: no data"},
        {DecadeGrid::State::zero, "assessed, nothing"},
    };
    for (const auto& [state, meaning] : meanings) {
        const double entry = 20 + text_width(meaning, text_size) + 30;
        if (x > 16 && x + entry - 30 > width) {
            x = 16;
            y += 28;
        }
        draw_mark(canvas, state, most * 0.5, most, x, y);
        canvas.text(x + 20, y + 4, meaning, small);
        x += entry;
    }
    canvas.grow_height(y + 16);
}

struct Columns {
    double left = 0;
    double width = 0;

    double center(std::size_t column) const { return left + (static_cast<double>(column) + 0.5) * width; }
};

/// Names over the columns that belong together, each with a rule below; returns how far down they reach.
double draw_groups(Canvas& canvas, const DecadeGrid& chart, const Columns& columns, double top) {
    struct Span {
        std::size_t first = 0;
        std::size_t last = 0;
    };
    std::vector<Span> spans;
    for (std::size_t i = 0; i < chart.columns.size(); ++i) {
        if (i > 0 && chart.columns[i].group == chart.columns[i - 1].group) {
            spans.back().last = i;
        } else {
            spans.push_back({i, i});
        }
    }
    double bottom = top;
    for (const Span& span : spans) {
        const auto& column = chart.columns[span.first];
        const double room = static_cast<double>(span.last - span.first + 1) * columns.width - 8;
        const std::string words = column.group + (column.baseline ? " (baseline)" : "");
        double line = top + 12;
        for (const std::string& piece : wrap_measured(words, room, 11.5, true)) {
            canvas.text((columns.center(span.first) + columns.center(span.last)) / 2, line, piece,
                        {.size = 11.5,
                         .fill = column.baseline ? palette::accent : palette::ink,
                         .anchor = Anchor::middle,
                         .bold = true});
            bottom = std::max(bottom, line + 6);
            line += 13;
        }
    }
    for (const Span& span : spans) {
        const bool baseline = chart.columns[span.first].baseline;
        canvas.line(
            columns.center(span.first) - columns.width / 2 + 4, bottom,
            columns.center(span.last) + columns.width / 2 - 4, bottom,
            {.stroke = baseline ? palette::accent : palette::quiet, .stroke_width = baseline ? 2.5 : 1});
    }
    return bottom;
}

double draw_heads(Canvas& canvas, const DecadeGrid& chart, const Columns& columns, double start) {
    const bool grouped = std::any_of(chart.columns.begin(), chart.columns.end(),
                                     [](const auto& column) { return !column.group.empty(); });
    const double top = grouped ? draw_groups(canvas, chart, columns, start) : start;
    double bottom = top;
    for (std::size_t i = 0; i < chart.columns.size(); ++i) {
        const auto& column = chart.columns[i];
        const bool named = column.baseline && !grouped;
        std::vector<std::string> words = wrap_measured(column.label, columns.width - 6, 11.5, named);
        if (named) words.emplace_back("baseline");
        double line = top + 14;
        for (const std::string& piece : words) {
            canvas.text(columns.center(i), line, piece,
                        {.size = named && piece == "baseline" ? 10 : 11.5,
                         .fill = column.baseline ? palette::accent : palette::ink,
                         .anchor = Anchor::middle,
                         .bold = named});
            bottom = std::max(bottom, line + 7);
            line += 13;
        }
    }
    return bottom;
}

/// The name of a row with its unit, beside the row or above it; returns the line below.
double draw_row_label(Canvas& canvas, const DecadeGrid::Row& row, double room, double y) {
    double line = y;
    for (const std::string& words : wrap_measured(row.label, room, 12)) {
        canvas.text(0, line, words, {.size = 12});
        line += 13.5;
    }
    if (row.unit.empty()) return line;
    for (const std::string& words : wrap_measured(row.unit, room, 10)) {
        canvas.text(0, line - 1, words, {.size = 10, .fill = palette::quiet});
        line += 11.5;
    }
    return line;
}

/// What one column needs so that its figures do not touch the next.
double least_column(const DecadeGrid& chart) {
    double widest = 40;
    for (const auto& row : chart.rows) {
        for (const auto& cell : row.cells) {
            const double sign = cell.state == DecadeGrid::State::at_least ? 14 : 0;
            widest = std::max(widest, text_width(cell.text, text_size) + sign);
        }
    }
    return widest + 6;
}

/// Cuts the columns into panels of at most `most` and about equal size, where it can between groups.
std::vector<DecadeGrid> panels_of(const DecadeGrid& chart, std::size_t most) {
    const std::size_t count = chart.columns.size();
    const std::size_t wanted = (count + most - 1) / std::max<std::size_t>(most, 1);
    const std::size_t fair = wanted == 0 ? count : (count + wanted - 1) / wanted;
    std::vector<DecadeGrid> panels;
    std::size_t room = 0;
    for (std::size_t i = 0; i < count; ++i) {
        std::size_t group = 1; // columns from here on that belong together
        const bool starts_group = i == 0 || chart.columns[i].group != chart.columns[i - 1].group;
        while (!chart.columns[i].group.empty() && i + group < count &&
               chart.columns[i + group].group == chart.columns[i].group) {
            ++group;
        }
        if (room == 0 || (starts_group && group > room)) {
            panels.push_back({.measure = chart.measure, .columns = {}, .rows = {}});
            for (const auto& row : chart.rows)
                panels.back().rows.push_back({row.label, row.unit, {}});
            room = std::min(most, std::max(fair, group));
        }
        panels.back().columns.push_back(chart.columns[i]);
        for (std::size_t row = 0; row < chart.rows.size(); ++row) {
            const auto& cells = chart.rows[row].cells;
            panels.back().rows[row].cells.push_back(i < cells.size() ? cells[i] : DecadeGrid::Cell());
        }
        --room;
    }
    return panels;
}

double draw_panel(Canvas& canvas, const DecadeGrid& chart, const Columns& columns, double most, bool narrow,
                  double start) {
    const double right = columns.left + static_cast<double>(chart.columns.size()) * columns.width;
    double y = draw_heads(canvas, chart, columns, start);
    for (const auto& row : chart.rows) {
        canvas.line(0, y, right, y, {.stroke = palette::rule, .stroke_width = 0.8});
        const double below_label =
            draw_row_label(canvas, row, narrow ? canvas.width() : row_label, y + (narrow ? 14 : 19));
        const double top = narrow ? below_label - 12 : y;
        for (std::size_t i = 0; i < row.cells.size() && i < chart.columns.size(); ++i) {
            const auto& cell = row.cells[i];
            draw_mark(canvas, cell.state, cell.decades, most, columns.center(i), top + 22);
            if (cell.state == DecadeGrid::State::zero && cell.text == "0") continue; // the mark says it
            const std::string words =
                cell.state == DecadeGrid::State::at_least ? "\u2265 " + cell.text : cell.text;
            canvas.text(columns.center(i), top + 49, words, {.size = text_size, .anchor = Anchor::middle});
        }
        y = std::max(top + row_height, narrow ? 0 : below_label - 4);
    }
    canvas.line(0, y, right, y, {.stroke = palette::rule, .stroke_width = 0.8});
    return y;
}

} // namespace

Canvas draw(const DecadeGrid& chart, const std::string& name, double width) {
    const bool narrow = is_narrow(width);
    const double most = most_decades(chart);
    Columns columns;
    columns.left = narrow ? 0 : row_label + 10;
    const double least = least_column(chart);
    const auto fitting = static_cast<std::size_t>(std::max(1.0, std::floor((width - columns.left) / least)));
    const std::vector<DecadeGrid> panels = panels_of(chart, fitting);
    std::size_t largest = 1;
    for (const DecadeGrid& panel : panels)
        largest = std::max(largest, panel.columns.size());
    columns.width = std::max(std::min((width - columns.left) / static_cast<double>(largest), 120.0), least);
    Canvas canvas(name, width);
    double y = 0;
    for (const DecadeGrid& panel : panels)
        y = draw_panel(canvas, panel, columns, most, narrow, y) + 26;
    draw_legend(canvas, chart, most, width, y);
    return canvas;
}

} // namespace routeweigh::writing
