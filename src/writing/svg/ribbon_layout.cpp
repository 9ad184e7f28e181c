// SPDX-License-Identifier: MIT
#include "writing/svg/ribbon_layout.hpp"

#include "writing/number_text.hpp"
#include "writing/svg/canvas.hpp"

#include <algorithm>

namespace routeweigh::writing {
namespace {

constexpr double heading_line = 15;
constexpr double band_gap = 6;

double sum_of(const std::vector<Ribbons::Flow>& flows) {
    double sum = 0;
    for (const auto& flow : flows)
        sum += drawable(flow.mass);
    return sum;
}

/// The label with its figure behind the last word, or on a line of its own where that is full.
std::vector<std::string> label_lines(const Ribbons::Flow& flow, double width, double size) {
    const bool bold = is_strong(flow.kind);
    std::vector<std::string> lines = wrap_measured(flow.label, width, size, bold);
    const std::string joined = lines.back() + "\u2002" + short_number(flow.mass);
    if (text_width(joined, size, bold) <= width) {
        lines.back() = joined;
    } else {
        lines.push_back(short_number(flow.mass));
    }
    return lines;
}

/// Bands of one side from the top down, each in a slot high enough for its label.
std::vector<Band> stack(const std::vector<Ribbons::Flow>& flows, double scale, double picture, double top,
                        double& bottom) {
    const double label_width = ribbon::label_width(picture);
    const double label_size = ribbon::label_size(picture);
    std::vector<Band> bands;
    double y = top;
    for (const auto& flow : flows) {
        Band band;
        band.kind = flow.kind;
        band.width = drawable(flow.mass) * scale;
        band.label = label_lines(flow, label_width, label_size);
        const double label_height = ribbon::line_height * static_cast<double>(band.label.size());
        const double slot = std::max(band.width, label_height);
        band.outer_top = y + (slot - band.width) / 2;
        band.label_top = y + (slot - label_height) / 2;
        y += slot + band_gap;
        bands.push_back(std::move(band));
    }
    bottom = flows.empty() ? top : y - band_gap;
    return bands;
}

void shift(std::vector<Band>& bands, double by) {
    for (Band& band : bands) {
        band.outer_top += by;
        band.label_top += by;
    }
}

void meet_block(std::vector<Band>& bands, double block_top) {
    double y = block_top;
    for (Band& band : bands) {
        band.inner_top = y;
        y += band.width;
    }
}

} // namespace

RibbonLayout layout_ribbons(const Ribbons& chart, double width) {
    RibbonLayout layout;
    double most = 0;
    for (const auto& step : chart.steps)
        most = std::max({most, sum_of(step.inputs), sum_of(step.outputs)});
    const double tallest = chart.steps.size() <= 1 ? 220 : chart.steps.size() <= 3 ? 170 : 130;
    layout.scale = most > 0 ? tallest / most : 0;
    double y = 20; // the line that names the sides and the unit
    for (const auto& step : chart.steps) {
        RibbonPanel panel;
        panel.top = y;
        panel.heading = wrap_measured(step.label, width, ribbon::heading_size, true);
        const double top = y + heading_line * static_cast<double>(panel.heading.size()) + 9;
        double left_bottom = top;
        double right_bottom = top;
        panel.inputs = stack(step.inputs, layout.scale, width, top, left_bottom);
        panel.outputs = stack(step.outputs, layout.scale, width, top, right_bottom);
        panel.block_height = std::max(sum_of(step.inputs), sum_of(step.outputs)) * layout.scale;
        const double bottom = std::max({left_bottom, right_bottom, top + panel.block_height});
        shift(panel.inputs, (bottom - left_bottom) / 2);
        shift(panel.outputs, (bottom - right_bottom) / 2);
        panel.block_top = top + (bottom - top - panel.block_height) / 2;
        meet_block(panel.inputs, panel.block_top);
        meet_block(panel.outputs, panel.block_top);
        panel.bottom = bottom;
        layout.panels.push_back(std::move(panel));
        y = bottom + 20;
    }
    layout.height = y - 10;
    return layout;
}

} // namespace routeweigh::writing
