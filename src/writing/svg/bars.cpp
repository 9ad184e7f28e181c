// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"
#include "writing/svg/axis.hpp"
#include "writing/svg/draw.hpp"

#include <algorithm>

namespace routeweigh::writing {
namespace {

constexpr double bar_height = 19;
constexpr double line_height = 14;
constexpr double longest_bar_label = 170;

struct Sums {
    double all = 0;
    double water = 0;
};

Sums sums_of(const StackedBars& chart, const StackedBars::Bar& bar) {
    Sums sums;
    for (std::size_t i = 0; i < chart.series.size() && i < bar.values.size(); ++i) {
        sums.all += drawable(bar.values[i]);
        if (chart.series[i].water) sums.water += drawable(bar.values[i]);
    }
    return sums;
}

std::string sum_text(const Sums& sums) {
    std::string text = short_number(sums.all);
    if (sums.water > 0) text += " (water " + short_number(sums.water) + ")";
    return text;
}

/// The steps of the dry series in their order; water takes none.
std::vector<Paint> paints_of(const StackedBars& chart) {
    const auto dry = static_cast<std::size_t>(std::count_if(
        chart.series.begin(), chart.series.end(), [](const auto& series) { return !series.water; }));
    const std::vector<std::size_t> steps = palette::steps_for(dry);
    std::vector<Paint> paints;
    std::size_t next = 0;
    for (const auto& series : chart.series) {
        Paint& paint = paints.emplace_back(Paint{.stroke = palette::blues[1], .stroke_width = 0.8});
        paint.hatched = series.water;
        if (!series.water) paint.fill = palette::blues[steps[next++]];
    }
    return paints;
}

std::string_view lettering_for(const Paint& paint) {
    const auto* step = std::find(palette::blues.begin(), palette::blues.end(), paint.fill);
    return palette::lettering_on(static_cast<std::size_t>(step - palette::blues.begin()));
}

double draw_legend(Canvas& canvas, const StackedBars& chart, const std::vector<Paint>& paints, double width) {
    double x = 0;
    double y = 2;
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        const double entry = 18 + text_width(chart.series[i].name, 11.5) + 14;
        if (x > 0 && x + entry > width) {
            x = 0;
            y += 19;
        }
        canvas.rect(x, y, 13, 12, paints[i]);
        canvas.text(x + 18, y + 10.5, chart.series[i].name, {.size = 11.5});
        x += entry;
    }
    return y + 28;
}

/// Dry parts in the order of the series, then the water.
void draw_bar(Canvas& canvas, const StackedBars& chart, const std::vector<Paint>& paints,
              const StackedBars::Bar& bar, const Axis& axis, double top) {
    double sum = 0;
    for (const bool water : {false, true}) {
        for (std::size_t i = 0; i < chart.series.size() && i < bar.values.size(); ++i) {
            const double value = drawable(bar.values[i]);
            if (chart.series[i].water != water || value == 0) continue;
            const double left = axis.pixel(sum);
            sum += value;
            const double width = axis.pixel(sum) - left;
            canvas.rect(left, top, width, bar_height, paints[i]);
            const std::string figure = short_number(value);
            if (!water && width > text_width(figure, small_size) + 6) {
                canvas.text(left + width / 2, top + 13.3, figure,
                            {.size = small_size, .fill = lettering_for(paints[i]), .anchor = Anchor::middle});
            }
        }
    }
}

/// Where a bar and its label stand; heights come first, since the grid lines lie below the bars.
struct BarPlace {
    std::vector<std::string> label;
    double group_top = -1; ///< below zero: no new group
    double label_top = 0;
    double bar_top = 0;
};

std::vector<BarPlace> place_bars(const StackedBars& chart, double start, double label_width, bool narrow,
                                 double& bottom) {
    std::vector<BarPlace> places;
    double y = start;
    std::string group_name;
    for (const auto& bar : chart.bars) {
        BarPlace place;
        if (bar.group != group_name && !bar.group.empty()) {
            y += places.empty() ? 0 : 8;
            place.group_top = y;
            y += 18;
        }
        group_name = bar.group;
        const bool named = bar.baseline && bar.group.empty();
        place.label = wrap_measured(bar.label + (named && narrow ? " (baseline)" : ""), label_width,
                                    label_size, bar.baseline);
        if (named && !narrow) place.label.emplace_back("baseline");
        const double label_height = line_height * static_cast<double>(place.label.size());
        place.label_top = y;
        place.bar_top = narrow ? y + label_height + 2 : y;
        y = narrow ? place.bar_top + bar_height + 9 : y + std::max(bar_height + 7, label_height + 11);
        places.push_back(std::move(place));
    }
    bottom = y;
    return places;
}

void draw_bar_axis(Canvas& canvas, const Axis& axis, const std::string& unit, double start, double bottom) {
    const int wanted = static_cast<int>((axis.last_pixel - axis.first_pixel) / 80);
    for (const double tick : linear_ticks(0, axis.to, std::max(wanted, 2))) {
        const double x = axis.pixel(tick);
        canvas.line(x, start - 5, x, bottom, {.stroke = palette::rule, .stroke_width = 0.8});
        const Anchor anchor = x < 8 ? Anchor::start : Anchor::middle;
        canvas.text(x, bottom + 14, tick_text(tick),
                    {.size = small_size, .fill = palette::quiet, .anchor = anchor});
    }
    canvas.text(axis.first_pixel, bottom + 30, unit, {.size = small_size, .fill = palette::quiet});
}

} // namespace

Canvas draw(const StackedBars& chart, const std::string& name, double width) {
    Canvas canvas(name, width);
    const bool narrow = is_narrow(width);
    const std::vector<Paint> paints = paints_of(chart);
    double label_width = 50;
    double longest_sum = 0;
    double most = 0;
    for (const auto& bar : chart.bars) {
        label_width = std::max(label_width, text_width(bar.label, label_size, bar.baseline));
        const Sums sums = sums_of(chart, bar);
        most = std::max(most, sums.all);
        longest_sum = std::max(longest_sum, text_width(sum_text(sums), small_size, true));
    }
    label_width = narrow ? width - 4 : std::min(label_width, longest_bar_label);
    Axis axis{.from = 0, .to = most > 0 ? most : 1};
    axis.first_pixel = narrow ? 1 : label_width + 18;
    axis.last_pixel = std::max(width - longest_sum - 10, axis.first_pixel + 100);

    const double start = draw_legend(canvas, chart, paints, width);
    double bottom = start;
    const std::vector<BarPlace> places = place_bars(chart, start, label_width, narrow, bottom);
    draw_bar_axis(canvas, axis, chart.unit, start, bottom);
    for (std::size_t i = 0; i < chart.bars.size(); ++i) {
        const auto& bar = chart.bars[i];
        const BarPlace& place = places[i];
        const std::string_view fill = bar.baseline ? palette::accent : palette::ink;
        if (place.group_top >= 0) {
            const std::string words = bar.baseline ? bar.group + " (baseline)" : bar.group;
            canvas.text(0, place.group_top + 12, words,
                        {.size = label_size, .fill = fill, .bold = true, .halo = true});
        }
        if (bar.baseline && !narrow)
            canvas.rect(label_width + 8, place.bar_top, 3, bar_height, {.fill = palette::accent});
        double line = place.label_top + (narrow ? 11 : 13.5);
        for (const std::string& words : place.label) {
            const bool tag = words == "baseline" && bar.baseline;
            canvas.text(narrow ? 0 : label_width, line, words,
                        {.size = tag ? small_size : label_size,
                         .fill = fill,
                         .anchor = narrow ? Anchor::start : Anchor::end,
                         .bold = bar.baseline,
                         .halo = narrow});
            line += line_height;
        }
        draw_bar(canvas, chart, paints, bar, axis, place.bar_top);
        const Sums sums = sums_of(chart, bar);
        canvas.text(axis.pixel(sums.all) + 6, place.bar_top + 13.3, sum_text(sums),
                    {.size = small_size, .bold = true, .halo = true});
    }
    canvas.grow_height(bottom + 36);
    return canvas;
}

} // namespace routeweigh::writing
