// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"
#include "writing/svg/axis.hpp"
#include "writing/svg/draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {
namespace {

constexpr double longest_group_label = 150;

std::uint64_t dots_in(const Dots& chart, const Dots::Stack& stack) {
    const std::uint64_t per_dot = std::max<std::uint64_t>(1, chart.per_dot);
    return (stack.count + per_dot - 1) / per_dot;
}

Axis axis_of(const Dots& chart) {
    Axis axis;
    bool any = false;
    for (const auto& group : chart.groups) {
        for (const auto& stack : group.stacks) {
            axis.from = any ? std::min(axis.from, stack.from) : stack.from;
            axis.to = any ? std::max(axis.to, stack.from + chart.bin) : stack.from + chart.bin;
            any = true;
        }
    }
    return axis;
}

void draw_scale(Canvas& canvas, const Axis& axis, const std::string& words, double bottom) {
    const int wanted = std::max(2, static_cast<int>((axis.last_pixel - axis.first_pixel) / 70));
    for (const double tick : linear_ticks(axis.from, axis.to, wanted)) {
        const double x = axis.pixel(tick);
        canvas.line(x, 0, x, bottom, {.stroke = palette::rule, .stroke_width = 0.8});
        canvas.text(x, bottom + 14, tick_text(tick),
                    {.size = small_size, .fill = palette::quiet, .anchor = Anchor::middle});
    }
    canvas.text(axis.first_pixel, bottom + 30, words, {.size = small_size, .fill = palette::quiet});
}

/// A bar from quartile to quartile with a notch at the median.
void draw_quartiles(Canvas& canvas, const Dots::Group& group, const Axis& axis, double y) {
    if (!group.quartile1 || !group.median || !group.quartile3) return;
    canvas.line(axis.pixel(*group.quartile1), y, axis.pixel(*group.quartile3), y,
                {.stroke = palette::accent, .stroke_width = 2});
    const double x = axis.pixel(*group.median);
    canvas.line(x, y - 5, x, y + 5, {.stroke = palette::accent, .stroke_width = 2.5});
}

} // namespace

Canvas draw(const Dots& chart, const std::string& name, double width) {
    Canvas canvas(name, width);
    const bool narrow = is_narrow(width);
    double label_width = 40;
    for (const auto& group : chart.groups)
        label_width = std::max(label_width, text_width(group.label, label_size));
    label_width = std::min(label_width, longest_group_label);
    Axis axis = axis_of(chart);
    axis.first_pixel = narrow ? 10 : label_width + 18;
    axis.last_pixel = width - 14;
    const double pitch =
        (axis.last_pixel - axis.first_pixel) * chart.bin / std::max(axis.to - axis.from, chart.bin);
    const double radius = std::clamp(0.45 * pitch, 1.0, 4.5);

    std::vector<double> grounds;
    double y = 4;
    for (const auto& group : chart.groups) {
        std::uint64_t highest = 1;
        for (const auto& stack : group.stacks)
            highest = std::max(highest, dots_in(chart, stack));
        y += (narrow ? 18 : 0) + std::max(22.0, 2 * radius * static_cast<double>(highest) + 6);
        grounds.push_back(y);
        y += 24;
    }
    const std::string each = chart.per_dot > 1
                                 ? fmt::format("; a dot stands for up to {} results", chart.per_dot)
                                 : std::string("; a dot is one result");
    draw_scale(canvas, axis, chart.quantity + ", " + chart.unit + (narrow ? "" : each), y);
    if (narrow)
        canvas.text(axis.first_pixel, y + 44, each.substr(2), {.size = small_size, .fill = palette::quiet});

    double top = 4;
    for (std::size_t i = 0; i < chart.groups.size(); ++i) {
        const auto& group = chart.groups[i];
        const double ground = grounds[i];
        canvas.line(axis.first_pixel, ground, axis.last_pixel, ground, {.stroke = palette::quiet});
        for (const auto& stack : group.stacks) {
            const double x = axis.pixel(stack.from + chart.bin / 2);
            const std::uint64_t dots = dots_in(chart, stack);
            for (std::uint64_t dot = 0; dot < dots; ++dot)
                canvas.circle(x, ground - 2 - radius * static_cast<double>(2 * dot + 1), radius,
                              {.fill = palette::blues[1]});
        }
        draw_quartiles(canvas, group, axis, ground + 9);
        const std::vector<std::string> lines =
            wrap_measured(group.label, narrow ? width - 20 : label_width, label_size);
        double line = narrow ? top + 11 : ground - 4 - 14 * static_cast<double>(lines.size() - 1);
        for (const std::string& words : lines) {
            canvas.text(narrow ? axis.first_pixel : label_width, line, words,
                        {.size = label_size, .anchor = narrow ? Anchor::start : Anchor::end, .halo = narrow});
            line += 14;
        }
        top = ground + 24;
    }
    canvas.grow_height(y + (narrow ? 52 : 38));
    return canvas;
}

} // namespace routeweigh::writing
