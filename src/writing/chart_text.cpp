// SPDX-License-Identifier: MIT
#include "writing/chart_text.hpp"

#include "writing/chart_table.hpp"
#include "writing/escape.hpp"
#include "writing/number_text.hpp"
#include "writing/terminal_table.hpp"
#include "writing/utf8.hpp"
#include "writing/wrap.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {
namespace {

using Lines = std::vector<std::string>;

constexpr int figure_column = 9;

std::string repeated(char mark, int count) {
    return std::string(static_cast<std::size_t>(std::max(0, count)), mark);
}

std::string baseline_mark(bool baseline) {
    return baseline ? "*" : "";
}

/// A label wrapped to its column, the drawing beside its first line.
void add_labelled(Lines& lines, const std::string& label, int label_width, const std::string& drawing,
                  int indent = 0) {
    bool first = true;
    for (const std::string& words : wrap_plain(label, label_width - indent)) {
        const std::string indented = repeated(' ', indent) + words;
        lines.push_back(first ? pad_right(indented, label_width) + "  " + drawing : indented);
        lines.back().erase(lines.back().find_last_not_of(' ') + 1);
        first = false;
    }
}

/// Entries three spaces apart, none broken over two lines unless it is longer than one.
void add_legend(Lines& lines, const std::vector<std::string>& entries, int width, const Ink& ink) {
    std::string line;
    const auto end_line = [&] {
        const bool fits = display_width(line) <= width;
        for (const std::string& piece : fits ? Lines{line} : wrap_plain(line, width))
            lines.push_back(ink.dim(piece));
        line.clear();
    };
    for (const std::string& entry : entries) {
        const std::string words = clean(entry);
        if (!line.empty() && display_width(line) + 3 + display_width(words) > width) end_line();
        line += (line.empty() ? "" : "   ") + words;
    }
    end_line();
}

template<class Items>
int label_width_of(const Items& items, int width) {
    int label_width = 1;
    for (const auto& item : items)
        label_width = std::max(label_width, display_width(clean(item.label)) + 2);
    return std::min(label_width, 3 * width / 10);
}

char mark_of(const StackedBars& chart, std::size_t series) {
    static constexpr std::string_view marks = "#=o+:x-.";
    if (chart.series[series].water) return '~';
    std::size_t dry = 0;
    for (std::size_t i = 0; i < series; ++i) {
        if (!chart.series[i].water) ++dry;
    }
    return marks[dry % marks.size()];
}

Lines lines_of(const StackedBars& chart, int width, const Ink& ink) {
    Lines lines;
    std::vector<std::string> legend;
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        legend.push_back(std::string(1, mark_of(chart, i)) + " " + chart.series[i].name);
    }
    legend.push_back("(" + chart.unit + ")");
    add_legend(lines, legend, width, ink);
    double longest = 0;
    for (const auto& bar : chart.bars) {
        double sum = 0;
        for (const double value : bar.values)
            sum += drawable(value);
        longest = std::max(longest, sum);
    }
    const int label_width = label_width_of(chart.bars, width);
    const int room = width - label_width - 2 - figure_column;
    std::string group_name;
    bool any_baseline = false;
    for (const auto& bar : chart.bars) {
        if (!bar.group.empty() && bar.group != group_name) {
            for (const std::string& line : wrap_plain(bar.group, width))
                lines.push_back(ink.bold(line));
        }
        group_name = bar.group;
        any_baseline = any_baseline || bar.baseline;
        std::string drawing;
        double sum = 0;
        for (const bool water : {false, true}) {
            for (std::size_t i = 0; i < chart.series.size() && i < bar.values.size(); ++i) {
                if (chart.series[i].water != water) continue;
                // Ends are rounded, not lengths, so that the whole bar has the right length.
                sum += drawable(bar.values[i]);
                const double end = longest > 0 ? sum / longest * room : 0;
                drawing += repeated(mark_of(chart, i),
                                    static_cast<int>(std::lround(end)) - static_cast<int>(drawing.size()));
            }
        }
        add_labelled(lines, bar.label + baseline_mark(bar.baseline), label_width,
                     drawing + " " + short_number(sum));
    }
    if (any_baseline) lines.push_back(ink.dim("* baseline"));
    return lines;
}

Lines lines_of(const Ribbons& chart, int width, const Ink& ink) {
    Lines lines;
    add_legend(lines,
               {"# product and what goes on", "= all else", "~ water", "(" + chart.unit + ", one scale)"},
               width, ink);
    double widest = 0;
    for (const auto& step : chart.steps) {
        for (const auto* side : {&step.inputs, &step.outputs}) {
            for (const auto& flow : *side)
                widest = std::max(widest, flow.mass);
        }
    }
    const int label_width = 2 * width / 5;
    const int room = width - label_width - 2 - figure_column - 2;
    for (const auto& step : chart.steps) {
        for (const std::string& line : wrap_plain(step.label, width))
            lines.push_back(ink.bold(line));
        for (const auto* side : {&step.inputs, &step.outputs}) {
            const bool in = side == &step.inputs;
            lines.emplace_back(in ? "  in" : "  out");
            for (const auto& flow : *side) {
                const char mark = flow.kind == Ribbons::Kind::water      ? '~'
                                  : flow.kind == Ribbons::Kind::ordinary ? '='
                                                                         : '#';
                const int length =
                    widest > 0 ? static_cast<int>(std::lround(drawable(flow.mass) / widest * room)) : 0;
                add_labelled(lines, flow.label, label_width,
                             pad_left(short_number(flow.mass), figure_column) + "  " + repeated(mark, length),
                             4);
            }
        }
    }
    return lines;
}

Lines lines_of(const DecadeGrid& chart, int width, const Ink& ink) {
    Table table = chart_table(chart);
    std::size_t longest = 0;
    std::vector<std::vector<std::string>> marks;
    for (const auto& row : chart.rows) {
        auto& line = marks.emplace_back();
        for (const auto& cell : row.cells) {
            const bool drawn =
                cell.state == DecadeGrid::State::value || cell.state == DecadeGrid::State::at_least;
            const int count = drawn ? std::clamp(static_cast<int>(std::ceil(cell.decades)), 0, 9) : 0;
            line.push_back(cell.state == DecadeGrid::State::unassessed ? "?" : repeated('#', count));
            longest = std::max(longest, line.back().size());
        }
    }
    for (std::size_t row = 0; row < chart.rows.size(); ++row) {
        for (std::size_t i = 0; i < marks[row].size(); ++i) {
            Cell& cell = table.rows[row].cells[i + 2];
            cell.text += " " + pad_right(marks[row][i], static_cast<int>(longest));
            cell.note.clear();
        }
    }
    Lines lines;
    const std::string key =
        "# each begun decade (" + chart.measure + "), ? unassessed: no data, >= no upper bound";
    for (const std::string& line : wrap_plain(key, width))
        lines.push_back(ink.dim(line));
    for (std::string& line : terminal_table(table, width, ink))
        lines.push_back(std::move(line));
    return lines;
}

Lines lines_of(const Intervals& given, int width, const Ink& ink) {
    Intervals chart = given;
    for (auto& item : chart.items) {
        for (auto* end : {&item.value, &item.low, &item.high})
            *end = finite(*end);
    }
    std::vector<double> shown;
    for (const auto& item : chart.items) {
        for (const auto& end : {item.value, item.low, item.high}) {
            if (end) shown.push_back(*end);
        }
    }
    if (shown.empty()) return terminal_table(chart_table(chart), width, ink);
    const double least = *std::min_element(shown.begin(), shown.end());
    const double most = *std::max_element(shown.begin(), shown.end());
    const bool logarithmic = chart.logarithmic && least > 0;
    const auto scale = [&](double value) { return logarithmic ? std::log10(value) : value; };
    const int label_width = label_width_of(chart.items, width);
    const int room = width - label_width - 2 - 2 * figure_column;
    const double span = scale(most) - scale(least);
    const auto place = [&](double value) {
        const double share = span > 0 ? (scale(value) - scale(least)) / span : 0.5;
        return static_cast<std::size_t>(std::lround(share * (room - 1)));
    };
    Lines lines;
    const std::string left = short_number(least);
    const std::string head = left + pad_left(short_number(most), room - display_width(left));
    add_labelled(lines, chart.quantity + ", " + chart.unit + (logarithmic ? ", log scale" : ""), label_width,
                 head);
    bool any_baseline = false;
    for (const auto& item : chart.items) {
        any_baseline = any_baseline || item.baseline;
        std::string drawing = repeated(' ', room);
        const double from = item.low.value_or(item.value.value_or(least));
        const double to = item.unbounded ? most : item.high.value_or(item.value.value_or(from));
        if (item.low || item.high || item.unbounded) {
            for (std::size_t i = place(from); i <= place(to); ++i)
                drawing[i] = '-';
            drawing[place(from)] = '|';
            drawing[place(to)] = item.unbounded ? '>' : '|';
        }
        if (item.value) drawing[place(*item.value)] = 'o';
        add_labelled(lines, item.label + baseline_mark(item.baseline), label_width,
                     drawing + "  " + (item.value ? short_number(*item.value) : std::string("-")));
    }
    if (any_baseline) lines.push_back(ink.dim("* baseline"));
    return lines;
}

Lines lines_of(const Curve& chart, int width, const Ink& ink) {
    return terminal_table(chart_table(chart), width, ink);
}

Lines lines_of(const Graph& chart, int width, const Ink& ink) {
    return terminal_table(chart_table(chart), width, ink);
}

Lines lines_of(const Dots& chart, int width, const Ink& ink) {
    Lines lines;
    add_legend(lines,
               {chart.per_dot == 1 ? "o one result" : fmt::format("o up to {} results", chart.per_dot),
                "M the bin with the median", "(" + chart.quantity + ", " + chart.unit + ")"},
               width, ink);
    for (const auto& group : chart.groups) {
        for (const std::string& line : wrap_plain(group.label, width))
            lines.push_back(ink.bold(line));
        for (const auto& stack : group.stacks) {
            const bool middle =
                group.median && *group.median >= stack.from && *group.median < stack.from + chart.bin;
            const auto dots = static_cast<int>((stack.count + chart.per_dot - 1) / chart.per_dot);
            std::string drawing(static_cast<std::size_t>(std::clamp(dots, 0, width - 30)), 'o');
            lines.push_back(pad_left(short_number(stack.from), figure_column) + (middle ? " M " : " | ") +
                            drawing + " " + std::to_string(stack.count));
        }
    }
    return lines;
}

} // namespace

std::vector<std::string> chart_text(const Chart& chart, int width, const Ink& ink) {
    return std::visit([&](const auto& what) { return lines_of(what, width, ink); }, chart);
}

} // namespace routeweigh::writing
