// SPDX-License-Identifier: MIT
#include "writing/chart_table.hpp"

#include "writing/number_text.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

namespace routeweigh::writing {
namespace {

Cell number_cell(double value) {
    return {short_number(value), value};
}

Table table_of(const StackedBars& chart) {
    Table table;
    table.columns.push_back({.heading = ""});
    for (const auto& series : chart.series) {
        table.columns.push_back({.heading = series.name, .align = Align::decimal, .unit = chart.unit});
    }
    table.columns.push_back({.heading = "sum", .align = Align::decimal, .unit = chart.unit});
    std::string group_name;
    for (const auto& bar : chart.bars) {
        if (!bar.group.empty() && bar.group != group_name) table.rows.push_back(group(bar.group));
        group_name = bar.group;
        Row row({Cell(bar.label)}, bar.baseline ? RowKind::baseline : RowKind::plain);
        double sum = 0;
        for (std::size_t i = 0; i < chart.series.size(); ++i) {
            const double value = i < bar.values.size() ? bar.values[i] : 0;
            row.cells.push_back(number_cell(value));
            sum += value;
        }
        row.cells.push_back(number_cell(sum));
        table.rows.push_back(std::move(row));
    }
    return table;
}

Table table_of(const Ribbons& chart) {
    Table table;
    table.columns = {{.heading = "step and flow"}, {.heading = "direction"}};
    table.columns.push_back({.heading = "mass", .align = Align::decimal, .unit = chart.unit});
    for (const auto& step : chart.steps) {
        table.rows.push_back(group(step.label));
        for (const auto& flow : step.inputs)
            table.rows.push_back({flow.label, "in", number_cell(flow.mass)});
        for (const auto& flow : step.outputs) {
            const char* direction = flow.kind == Ribbons::Kind::product        ? "out, product"
                                    : flow.kind == Ribbons::Kind::intermediate ? "out, to a later step"
                                    : flow.kind == Ribbons::Kind::recovered    ? "out, fed back"
                                                                               : "out";
            table.rows.push_back({flow.label, direction, number_cell(flow.mass)});
        }
    }
    return table;
}

Table table_of(const DecadeGrid& chart) {
    Table table;
    table.columns = {{.heading = ""}, {.heading = "unit"}};
    for (const auto& column : chart.columns) {
        const std::string heading = column.group.empty() ? column.label : column.group + ": " + column.label;
        table.columns.push_back({.heading = heading, .align = Align::right, .baseline = column.baseline});
    }
    for (const auto& line : chart.rows) {
        Row& row = table.rows.emplace_back();
        row.cells = {Cell(line.label), Cell(line.unit)};
        for (const auto& mark : line.cells) {
            Cell cell(mark.text.empty() && mark.state == DecadeGrid::State::zero ? "0" : mark.text);
            if (mark.state == DecadeGrid::State::at_least) cell.mark = Mark::at_least;
            if (mark.state == DecadeGrid::State::unassessed) cell.note = "unassessed: no data";
            row.cells.push_back(std::move(cell));
        }
    }
    return table;
}

Table table_of(const Intervals& chart) {
    Table table;
    table.columns.push_back({.heading = ""});
    for (const char* heading : {"value", "low", "high"}) {
        table.columns.push_back({.heading = heading, .align = Align::decimal, .unit = chart.unit});
    }
    const auto cell = [](const std::optional<double>& value) {
        return value ? number_cell(*value) : missing("not known");
    };
    for (const auto& item : chart.items) {
        Row row({Cell(item.label), cell(item.value), cell(item.low)});
        row.cells.push_back(item.unbounded ? missing("no upper bound is known") : cell(item.high));
        if (item.baseline) row.kind = RowKind::baseline;
        table.rows.push_back(std::move(row));
    }
    return table;
}

/// About a dozen indexes, evenly spaced, the first and the last among them.
std::vector<std::size_t> thinned(std::size_t count) {
    constexpr std::size_t most = 12;
    std::vector<std::size_t> chosen;
    const std::size_t wanted = std::min(count, most);
    for (std::size_t i = 0; i < wanted; ++i)
        chosen.push_back(wanted < 2 ? 0 : i * (count - 1) / (wanted - 1));
    return chosen;
}

bool same_x(const Curve& chart) {
    return std::all_of(chart.lines.begin(), chart.lines.end(), [&](const Curve::Line& line) {
        const auto& first = chart.lines[0].points;
        return std::equal(line.points.begin(), line.points.end(), first.begin(), first.end(),
                          [](const Curve::Point& a, const Curve::Point& b) { return a.x == b.x; });
    });
}

/// A column for each line when all lines have the same x, else one row for each point of each line.
Table table_of(const Curve& chart) {
    Table table;
    const Column x{.heading = chart.x.quantity, .align = Align::decimal, .unit = chart.x.unit};
    if (!chart.lines.empty() && same_x(chart)) {
        table.columns = {x};
        for (const auto& line : chart.lines) {
            table.columns.push_back({.heading = line.label,
                                     .align = Align::decimal,
                                     .unit = chart.y.unit,
                                     .baseline = line.baseline});
        }
        for (const std::size_t i : thinned(chart.lines[0].points.size())) {
            Row row({number_cell(chart.lines[0].points[i].x)});
            for (const auto& line : chart.lines)
                row.cells.push_back(number_cell(line.points[i].y));
            table.rows.push_back(std::move(row));
        }
        table.remarks = {Text(chart.y.quantity)};
    } else {
        table.columns = {{.heading = "line"}, x};
        table.columns.push_back({.heading = chart.y.quantity, .align = Align::decimal, .unit = chart.y.unit});
        for (const auto& line : chart.lines) {
            for (const std::size_t i : thinned(line.points.size())) {
                Row row({Cell(line.label), number_cell(line.points[i].x), number_cell(line.points[i].y)});
                if (line.baseline) row.kind = RowKind::baseline;
                table.rows.push_back(std::move(row));
            }
        }
    }
    for (const auto& marker : chart.markers) {
        table.remarks.push_back(marker.label + ": " + short_number(marker.at.x) + " " + chart.x.unit + ", " +
                                short_number(marker.at.y) + " " + chart.y.unit);
    }
    return table;
}

Table table_of(const Graph& chart) {
    Table table;
    table.columns = {{.heading = "reaction"}, {.heading = "takes"}, {.heading = "gives"}};
    for (std::size_t i = 0; i < chart.squares.size(); ++i) {
        const auto& square = chart.squares[i];
        const std::string name = square.title.empty() ? square.label : square.label + " " + square.title;
        table.rows.push_back({name, side_of_square(chart, i, true), side_of_square(chart, i, false)});
    }
    for (const auto& key : chart.keys) {
        std::string names;
        for (const auto& box : chart.boxes) {
            if (box.style == key.style) names += (names.empty() ? "" : ", ") + box.label;
        }
        if (!names.empty()) table.remarks.push_back(key.meaning + ": " + names);
    }
    return table;
}

/// Bins by groups; a bin that no group has is left out.
Table table_of(const Dots& chart) {
    Table table;
    table.columns = {{.heading = chart.quantity, .unit = chart.unit}};
    std::set<double> bins;
    for (const auto& group : chart.groups) {
        table.columns.push_back({.heading = group.label, .align = Align::right});
        for (const auto& stack : group.stacks)
            bins.insert(stack.from);
    }
    for (const double bin : bins) {
        Row row({Cell(short_number(bin) + " to below " + short_number(bin + chart.bin))});
        for (const auto& group : chart.groups) {
            std::uint64_t count = 0;
            for (const auto& stack : group.stacks)
                count += stack.from == bin ? stack.count : 0;
            row.cells.push_back(Cell(std::to_string(count), static_cast<double>(count)));
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

} // namespace

std::string side_of_square(const Graph& graph, std::size_t square, bool entering) {
    std::string side;
    for (const auto& arrow : graph.arrows) {
        if (arrow.square != static_cast<int>(square) || arrow.into_square != entering) continue;
        if (arrow.box < 0 || static_cast<std::size_t>(arrow.box) >= graph.boxes.size()) continue;
        if (!side.empty()) side += " + ";
        if (!arrow.coefficient.empty()) side += arrow.coefficient + " ";
        side += graph.boxes[static_cast<std::size_t>(arrow.box)].label;
    }
    return side;
}

Table chart_table(const Chart& chart) {
    return std::visit([](const auto& what) { return table_of(what); }, chart);
}

} // namespace routeweigh::writing
