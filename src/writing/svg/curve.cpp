// SPDX-License-Identifier: MIT
#include "writing/svg/axis.hpp"
#include "writing/svg/draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace routeweigh::writing {
namespace {

constexpr double top = 26;
constexpr double bottom = 316;
constexpr double left = 46;
constexpr double line_label_size = 11.5;

struct Range {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();

    void include(double value) {
        if (!std::isfinite(value)) return;
        low = std::min(low, value);
        high = std::max(high, value);
    }
    bool empty() const { return low > high; }
};

/// Lines differ by dash as well as by shade; the baseline is solid and accented.
Paint line_paint(std::size_t index, bool baseline) {
    static constexpr std::string_view dashes[] = {"", "8 4", "2 3", "10 3 2 3"};
    static constexpr std::size_t shades[] = {0, 1, 1, 2};
    if (baseline) return {.stroke = palette::accent, .stroke_width = 2.6};
    return {.stroke = palette::blues[shades[index % 4]], .stroke_width = 2, .dash = dashes[index % 4]};
}

/// Moves labels down where they would overlap, then the whole stack up where it would leave the picture.
std::vector<double> spread(const std::vector<double>& wanted, const std::vector<double>& heights) {
    std::vector<std::size_t> order(wanted.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return wanted[a] < wanted[b]; });
    std::vector<double> placed(wanted.size());
    double free_from = top - 10;
    for (const std::size_t i : order) {
        placed[i] = std::max(wanted[i], free_from);
        free_from = placed[i] + heights[i] + 3;
    }
    double free_to = bottom + 6;
    for (auto i = order.rbegin(); i != order.rend(); ++i) {
        placed[*i] = std::min(placed[*i], free_to - heights[*i]);
        free_to = placed[*i] - 3;
    }
    return placed;
}

void draw_frame(Canvas& canvas, const Curve& chart, const Axis& x, const Axis& y) {
    for (const double tick : linear_ticks(y.from, y.to, 5)) {
        canvas.line(left, y.pixel(tick), x.last_pixel, y.pixel(tick),
                    {.stroke = palette::rule, .stroke_width = 0.8});
        canvas.text(left - 8, y.pixel(tick) + 4, tick_text(tick),
                    {.size = 10.5, .fill = palette::quiet, .anchor = Anchor::end});
    }
    for (const double tick : linear_ticks(x.from, x.to, static_cast<int>((x.last_pixel - left) / 70))) {
        canvas.line(x.pixel(tick), bottom, x.pixel(tick), bottom + 4, {.stroke = palette::quiet});
        canvas.text(x.pixel(tick), bottom + 18, tick_text(tick),
                    {.size = 10.5, .fill = palette::quiet, .anchor = Anchor::middle});
    }
    canvas.line(left, bottom, x.last_pixel, bottom, {.stroke = palette::quiet});
    canvas.text(0, 11, chart.y.quantity + ", " + chart.y.unit, {.size = 10.5, .fill = palette::quiet});
    canvas.text(x.last_pixel, bottom + 36, chart.x.quantity + ", " + chart.x.unit,
                {.size = 10.5, .fill = palette::quiet, .anchor = Anchor::end});
}

void draw_markers(Canvas& canvas, const Curve& chart, const Axis& x, const Axis& y) {
    double free_below = top + 12;
    for (const auto& marker : chart.markers) {
        if (!std::isfinite(marker.at.x) || !std::isfinite(marker.at.y)) continue;
        const double px = x.pixel(marker.at.x);
        const double py = y.pixel(marker.at.y);
        canvas.line(px, py, px, bottom, {.stroke = palette::ink, .stroke_width = 1, .dash = "2 3"});
        canvas.circle(px, py, 5.5, {.fill = palette::paper, .stroke = palette::ink, .stroke_width = 2});
        // The label stands in the free band above the lines, tied to its point by a thin leader.
        const double width = text_width(marker.label, line_label_size, true);
        const double label_x =
            std::clamp(px, left + width / 2 + 4, std::max(left + width / 2 + 4, x.last_pixel - width / 2));
        canvas.line(label_x, free_below + 4, px, py - 6, {.stroke = palette::ink, .stroke_width = 0.7});
        canvas.text(label_x, free_below, marker.label,
                    {.size = line_label_size, .anchor = Anchor::middle, .bold = true, .halo = true});
        free_below += 17;
    }
}

} // namespace

Canvas draw(const Curve& chart, const std::string& name, double width) {
    Canvas canvas(name, width);
    Range xs;
    Range ys;
    for (const auto& line : chart.lines) {
        for (const auto& point : line.points) {
            xs.include(point.x);
            ys.include(point.y);
        }
    }
    if (xs.empty() || ys.empty()) {
        canvas.text(0, 14, "no data", {.fill = palette::quiet});
        canvas.grow_height(24);
        return canvas;
    }
    double label_width = 40;
    for (const auto& line : chart.lines) {
        label_width = std::max(label_width, text_width(line.label, line_label_size, line.baseline));
    }
    label_width = std::min(label_width, 0.22 * width);
    const Axis x{xs.low, xs.high, left, width - label_width - 16, false};
    // Room above the lines for the labels of the markers.
    const double span = ys.high > ys.low ? ys.high - ys.low : std::max(std::abs(ys.high), 1.0);
    const double headroom = 0.04 + 0.075 * static_cast<double>(chart.markers.size());
    const double floor = ys.low >= 0 && ys.low < 0.5 * span ? 0 : ys.low - 0.06 * span;
    const Axis y{floor, ys.high + headroom * span, bottom, top, false};
    draw_frame(canvas, chart, x, y);

    std::vector<double> wanted;
    std::vector<double> heights;
    std::vector<std::vector<std::string>> labels;
    for (std::size_t i = 0; i < chart.lines.size(); ++i) {
        const auto& line = chart.lines[i];
        std::string data;
        double last = bottom;
        for (const auto& point : line.points) {
            if (!std::isfinite(point.x) || !std::isfinite(point.y)) continue;
            last = y.pixel(point.y);
            data += fmt::format("{}{:.2f} {:.2f}", data.empty() ? "M" : " L", x.pixel(point.x), last);
        }
        Paint paint = line_paint(i, line.baseline);
        if (!data.empty()) canvas.path(data, paint);
        labels.push_back(wrap_measured(line.label, label_width, line_label_size, line.baseline));
        if (line.baseline) labels.back().emplace_back("baseline");
        heights.push_back(13.5 * static_cast<double>(labels.back().size()));
        wanted.push_back(last - heights.back() / 2);
    }
    const std::vector<double> placed = spread(wanted, heights);
    for (std::size_t i = 0; i < chart.lines.size(); ++i) {
        double baseline_y = placed[i] + 10.5;
        for (const std::string& words : labels[i]) {
            canvas.text(x.last_pixel + 10, baseline_y, words,
                        {.size = line_label_size,
                         .fill = chart.lines[i].baseline ? palette::accent : palette::ink,
                         .bold = chart.lines[i].baseline});
            baseline_y += 13.5;
        }
    }
    draw_markers(canvas, chart, x, y);
    canvas.grow_height(bottom + 44);
    return canvas;
}

} // namespace routeweigh::writing
