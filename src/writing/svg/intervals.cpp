// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"
#include "writing/svg/axis.hpp"
#include "writing/svg/draw.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {
namespace {

constexpr double longest_item_label = 190;

std::vector<double> shown_values(const Intervals& chart) {
    std::vector<double> shown;
    for (const auto& item : chart.items) {
        for (const auto& end : {item.value, item.low, item.high}) {
            if (end) shown.push_back(*end);
        }
    }
    return shown;
}

std::string words_of(const Intervals::Item& item) {
    std::string words = item.value ? short_number(*item.value) : std::string("not known");
    if (item.low && item.unbounded) return words + "  (\u2265 " + short_number(*item.low) + ")";
    if (item.unbounded) return "\u2265 " + words;
    if (item.low && item.high)
        words += "  (" + short_number(*item.low) + " to " + short_number(*item.high) + ")";
    return words;
}

void draw_item(Canvas& canvas, const Intervals::Item& item, const Axis& axis, double y) {
    const std::string_view colour = item.baseline ? palette::accent : palette::blues[1];
    const Paint bar{.stroke = colour, .stroke_width = 2};
    if (item.low || item.high || item.unbounded) {
        const double from = axis.pixel(item.low.value_or(item.value.value_or(axis.from)));
        const double to = item.unbounded ? axis.last_pixel + 6
                                         : axis.pixel(item.high.value_or(item.value.value_or(axis.to)));
        Paint arrow = bar;
        arrow.arrow = item.unbounded;
        canvas.line(from, y, to, y, arrow);
        canvas.line(from, y - 5, from, y + 5, bar);
        if (!item.unbounded) canvas.line(to, y - 5, to, y + 5, bar);
    }
    if (!item.value) return;
    const double x = axis.pixel(*item.value);
    // The baseline is a square, the others are rings, so that the accent is not told by colour alone.
    if (item.baseline) {
        canvas.rect(x - 5, y - 5, 10, 10, {.fill = palette::accent});
    } else {
        canvas.circle(x, y, 4.5, {.fill = palette::paper, .stroke = palette::blues[0], .stroke_width = 2});
    }
}

/// Zero belongs on the scale unless all values lie far from it, where it would hide the differences.
void choose_range(Axis& axis, const std::vector<double>& shown, bool logarithmic) {
    if (shown.empty()) return;
    const double least = *std::min_element(shown.begin(), shown.end());
    const double most = *std::max_element(shown.begin(), shown.end());
    axis.logarithmic = logarithmic && least > 0;
    if (axis.logarithmic) {
        axis.from = least / 1.2;
        axis.to = most * 1.2;
        return;
    }
    const double span = most > least ? most - least : std::max(std::abs(most), 1.0);
    axis.from = least >= 0 && least < 1.5 * span ? 0 : least - 0.08 * span;
    axis.to = most + 0.05 * span;
}

void draw_item_axis(Canvas& canvas, const Axis& axis, const std::string& words, double bottom) {
    const int wanted = std::max(2, static_cast<int>((axis.last_pixel - axis.first_pixel) / 75));
    double free_from = -100;
    const std::vector<double> ticks =
        axis.logarithmic ? logarithmic_ticks(axis.from, axis.to) : linear_ticks(axis.from, axis.to, wanted);
    for (const double tick : ticks) {
        const double x = axis.pixel(tick);
        canvas.line(x, 0, x, bottom, {.stroke = palette::rule, .stroke_width = 0.8});
        const double half = text_width(tick_text(tick), small_size) / 2;
        if (x - half < free_from) continue;
        canvas.text(x, bottom + 14, tick_text(tick),
                    {.size = small_size, .fill = palette::quiet, .anchor = Anchor::middle});
        free_from = x + half + 6;
    }
    canvas.text(axis.first_pixel, bottom + 30, words, {.size = small_size, .fill = palette::quiet});
}

struct ItemPlace {
    std::vector<std::string> label;
    double label_top = 0;
    double bar = 0;
};

std::vector<ItemPlace> place_items(const Intervals& chart, double label_width, bool narrow, double& bottom) {
    std::vector<ItemPlace> places;
    double y = 4;
    for (const auto& item : chart.items) {
        ItemPlace place;
        const bool beside = item.baseline && narrow;
        place.label =
            wrap_measured(item.label + (beside ? " (baseline)" : ""), label_width, label_size, item.baseline);
        if (item.baseline && !narrow) place.label.emplace_back("baseline");
        place.label_top = y;
        double height = 14 * static_cast<double>(place.label.size());
        if (narrow) height += 13; // the figures stand below the label
        place.bar = narrow ? y + height + 9 : y + 9;
        y = narrow ? place.bar + 18 : y + std::max(26.0, height + 8);
        places.push_back(std::move(place));
    }
    bottom = y;
    return places;
}

} // namespace

Canvas draw(const Intervals& given, const std::string& name, double width) {
    Intervals chart = given;
    for (auto& item : chart.items) {
        for (auto* end : {&item.value, &item.low, &item.high})
            *end = finite(*end);
    }
    Canvas canvas(name, width);
    const bool narrow = is_narrow(width);
    double label_width = 60;
    double words_width = 40;
    for (const auto& item : chart.items) {
        label_width = std::max(label_width, text_width(item.label, label_size, item.baseline));
        words_width = std::max(words_width, text_width(words_of(item), small_size));
    }
    label_width = narrow ? width - 4 : std::min(label_width, longest_item_label);
    Axis axis;
    axis.first_pixel = narrow ? 8 : label_width + 22;
    axis.last_pixel = narrow ? width - 16 : width - words_width - 24;
    choose_range(axis, shown_values(chart), chart.logarithmic);

    double bottom = 0;
    const std::vector<ItemPlace> places = place_items(chart, label_width, narrow, bottom);
    const std::string scale = axis.logarithmic ? " (logarithmic scale)" : "";
    draw_item_axis(canvas, axis, chart.quantity + ", " + chart.unit + scale, bottom);
    for (const auto& item : chart.items) {
        if (!item.baseline || !item.value) continue;
        const double x = axis.pixel(*item.value);
        canvas.line(x, 0, x, bottom, {.stroke = palette::accent, .stroke_width = 1, .dash = "4 3"});
    }
    for (std::size_t i = 0; i < chart.items.size(); ++i) {
        const auto& item = chart.items[i];
        const std::string_view fill = item.baseline ? palette::accent : palette::ink;
        double line = places[i].label_top + (narrow ? 11 : 13);
        for (const std::string& words : places[i].label) {
            const bool tag = item.baseline && words == "baseline";
            canvas.text(narrow ? 0 : label_width, line, words,
                        {.size = tag ? small_size : label_size,
                         .fill = fill,
                         .anchor = narrow ? Anchor::start : Anchor::end,
                         .bold = item.baseline,
                         .halo = narrow});
            line += 14;
        }
        draw_item(canvas, item, axis, places[i].bar);
        const double words_x = narrow ? 0 : width - words_width - 4;
        canvas.text(words_x, narrow ? line - 1 : places[i].bar + 4, words_of(item),
                    {.size = small_size, .halo = narrow});
    }
    canvas.grow_height(bottom + 38);
    return canvas;
}

} // namespace routeweigh::writing
