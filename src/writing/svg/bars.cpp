// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"
#include "writing/svg/axis.hpp"
#include "writing/svg/draw.hpp"

#include <algorithm>

namespace routeweigh::writing {
namespace {

constexpr double bar_height = 19;
constexpr double line_height = 14;
constexpr double longest_label = 170;
constexpr double label_size = 12;
constexpr double small_size = 10.5;

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
    if (sums.water > 0) text += "  (water " + short_number(sums.water) + ")";
    return text;
}

Paint paint_of(const StackedBars& chart, std::size_t series) {
    Paint paint{.stroke = palette::blues[1], .stroke_width = 0.8};
    if (chart.series[series].water) {
        paint.hatched = true;
        return paint;
    }
    std::size_t dry = 0;
    std::size_t before = 0;
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        if (chart.series[i].water) continue;
        if (i < series) ++before;
        ++dry;
    }
    paint.fill = palette::blues[palette::steps_for(dry)[before]];
    return paint;
}

std::string_view lettering_for(const Paint& paint) {
    const auto* step = std::find(palette::blues.begin(), palette::blues.end(), paint.fill);
    return palette::lettering_on(static_cast<std::size_t>(step - palette::blues.begin()));
}

double draw_legend(Canvas& canvas, const StackedBars& chart) {
    double x = 0;
    double y = 2;
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        const double width = 18 + text_width(chart.series[i].name, 11.5) + 16;
        if (x > 0 && x + width > picture_width) {
            x = 0;
            y += 19;
        }
        canvas.rect(x, y, 13, 12, paint_of(chart, i));
        canvas.text(x + 18, y + 10.5, chart.series[i].name, {.size = 11.5});
        x += width;
    }
    return y + 26;
}

/// Dry parts in the order of the series, then the water.
void draw_bar(Canvas& canvas, const StackedBars& chart, const StackedBars::Bar& bar, const Axis& axis,
              double top) {
    double sum = 0;
    for (const bool water : {false, true}) {
        for (std::size_t i = 0; i < chart.series.size() && i < bar.values.size(); ++i) {
            const double value = drawable(bar.values[i]);
            if (chart.series[i].water != water || value == 0) continue;
            const double left = axis.pixel(sum);
            sum += value;
            const double width = axis.pixel(sum) - left;
            const Paint paint = paint_of(chart, i);
            canvas.rect(left, top, width, bar_height, paint);
            const std::string figure = short_number(value);
            if (!water && width > text_width(figure, small_size) + 6) {
                canvas.text(left + width / 2, top + 13.3, figure,
                            {.size = small_size, .fill = lettering_for(paint), .anchor = Anchor::middle});
            }
        }
    }
}

} // namespace

Canvas draw(const StackedBars& chart, const std::string& name) {
    Canvas canvas(name, picture_width);
    double label_width = 0;
    double longest_sum = 0;
    double most = 0;
    for (const auto& bar : chart.bars) {
        label_width = std::max(label_width, text_width(bar.label, label_size, bar.baseline));
        const Sums sums = sums_of(chart, bar);
        most = std::max(most, sums.all);
        longest_sum = std::max(longest_sum, text_width(sum_text(sums), small_size, true));
    }
    label_width = std::min(std::max(label_width, 50.0), longest_label);
    Axis axis{.from = 0, .to = most > 0 ? most : 1};
    axis.first_pixel = label_width + 18;
    axis.last_pixel = std::max(picture_width - longest_sum - 10, axis.first_pixel + 100);

    const double start = draw_legend(canvas, chart);
    // Heights come first, since the grid lines lie below the bars.
    struct Place {
        std::vector<std::string> label;
        double top = 0;
        double group_top = -1;
    };
    std::vector<Place> places;
    double y = start;
    std::string group_name;
    for (const auto& bar : chart.bars) {
        Place place;
        if (bar.group != group_name && !bar.group.empty()) {
            y += places.empty() ? 0 : 8;
            place.group_top = y;
            y += 18;
        }
        group_name = bar.group;
        place.label = wrap_measured(bar.label, label_width, label_size, bar.baseline);
        if (bar.baseline && bar.group.empty()) place.label.emplace_back("baseline");
        place.top = y;
        y += std::max(bar_height, line_height * static_cast<double>(place.label.size())) + 7;
        places.push_back(std::move(place));
    }
    const double bottom = y;
    const int wanted = static_cast<int>((axis.last_pixel - axis.first_pixel) / 80);
    for (const double tick : linear_ticks(0, axis.to, std::max(wanted, 2))) {
        const double x = axis.pixel(tick);
        canvas.line(x, start - 4, x, bottom, {.stroke = palette::rule, .stroke_width = 0.8});
        canvas.text(x, bottom + 14, short_number(tick),
                    {.size = small_size, .fill = palette::quiet, .anchor = Anchor::middle});
    }
    canvas.text(axis.first_pixel, bottom + 30, chart.unit, {.size = small_size, .fill = palette::quiet});

    for (std::size_t i = 0; i < chart.bars.size(); ++i) {
        const auto& bar = chart.bars[i];
        const Place& place = places[i];
        const std::string_view fill = bar.baseline ? palette::accent : palette::ink;
        if (place.group_top >= 0) {
            const std::string words = bar.baseline ? bar.group + " (baseline)" : bar.group;
            canvas.text(0, place.group_top + 12, words,
                        {.size = label_size, .fill = fill, .bold = true, .halo = true});
        }
        if (bar.baseline) canvas.rect(label_width + 8, place.top, 3, bar_height, {.fill = palette::accent});
        double line = place.top + 13.5;
        for (const std::string& words : place.label) {
            canvas.text(label_width, line, words,
                        {.size = label_size, .fill = fill, .anchor = Anchor::end, .bold = bar.baseline});
            line += line_height;
        }
        draw_bar(canvas, chart, bar, axis, place.top);
        const Sums sums = sums_of(chart, bar);
        canvas.text(axis.pixel(sums.all) + 6, place.top + 13.3, sum_text(sums),
                    {.size = small_size, .bold = true, .halo = true});
    }
    canvas.grow_height(bottom + 36);
    return canvas;
}

} // namespace routeweigh::writing
