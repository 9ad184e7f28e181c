// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"
#include "writing/svg/draw.hpp"
#include "writing/svg/ribbon_layout.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::writing {
namespace {

constexpr double block_width = 22;

/// Where the stubs and the block stand across the picture.
struct Across {
    double left_stub = 0;
    double block = 0;
    double right_stub = 0;
};

Across across(double width) {
    const double margin = ribbon::label_width(width) + 8;
    return {margin, (width - block_width) / 2, width - margin - ribbon::stub_width};
}

Paint ribbon_paint(Ribbons::Kind kind) {
    Paint paint{.fill = palette::blues[4]};
    switch (kind) {
    case Ribbons::Kind::ordinary:
        break;
    case Ribbons::Kind::water:
        paint.hatched = true;
        paint.stroke = palette::blues[2];
        paint.stroke_width = 0.8;
        break;
    case Ribbons::Kind::intermediate:
        paint.fill = palette::blues[2];
        break;
    case Ribbons::Kind::recovered:
        paint.fill = palette::paper;
        paint.stroke = palette::blues[1];
        paint.dash = "5 3";
        break;
    case Ribbons::Kind::product:
        paint.fill = palette::blues[0];
        break;
    }
    return paint;
}

/// A band keeps its full width at both ends; the sides are equal curves one width apart.
std::string band_path(double x1, double top1, double x2, double top2, double width) {
    const double middle = (x1 + x2) / 2;
    return fmt::format("M{0:.2f} {1:.2f} C{2:.2f} {1:.2f} {2:.2f} {3:.2f} {4:.2f} {3:.2f} L{4:.2f} {5:.2f} "
                       "C{2:.2f} {5:.2f} {2:.2f} {6:.2f} {0:.2f} {6:.2f} Z",
                       x1, top1, middle, top2, x2, top2 + width, top1 + width);
}

/// A thread below a tenth of a pixel would vanish, so a fine line marks where it runs.
void draw_thread(Canvas& canvas, double x1, double y1, double x2, double y2) {
    const double middle = (x1 + x2) / 2;
    canvas.path(fmt::format("M{0:.2f} {1:.2f} C{2:.2f} {1:.2f} {2:.2f} {3:.2f} {4:.2f} {3:.2f}", x1, y1,
                            middle, y2, x2),
                {.stroke = palette::blues[2], .stroke_width = 0.6});
}

void draw_side(Canvas& canvas, const std::vector<Band>& bands, const Across& at, bool input) {
    const double stub = input ? at.left_stub : at.right_stub;
    const double x1 = input ? at.left_stub + ribbon::stub_width : at.block + block_width;
    const double x2 = input ? at.block : at.right_stub;
    for (const Band& band : bands) {
        const double from = input ? band.outer_top : band.inner_top;
        const double to = input ? band.inner_top : band.outer_top;
        if (band.width < 1) {
            draw_thread(canvas, x1, from + band.width / 2, x2, to + band.width / 2);
        }
        if (band.width > 0) canvas.path(band_path(x1, from, x2, to, band.width), ribbon_paint(band.kind));
        const Paint stub_paint{.fill = band.kind == Ribbons::Kind::product ? palette::blues[0]
                                                                           : palette::blues[1]};
        canvas.rect(stub, band.outer_top, ribbon::stub_width, std::max(band.width, 0.6), stub_paint);
        double y = band.label_top + 10.5;
        for (const std::string& line : band.label) {
            canvas.text(input ? stub - 7 : stub + ribbon::stub_width + 7, y, line,
                        {.size = ribbon::label_size(canvas.width()),
                         .anchor = input ? Anchor::end : Anchor::start,
                         .bold = is_strong(band.kind)});
            y += ribbon::line_height;
        }
    }
}

void draw_legend(Canvas& canvas, const Ribbons& chart, double width, double y) {
    static constexpr std::pair<Ribbons::Kind, std::string_view> meanings[] = {
        {Ribbons::Kind::product, "product"},    {Ribbons::Kind::intermediate, "goes on to another step"},
        {Ribbons::Kind::recovered, "fed back"}, {Ribbons::Kind::water, "water"},
        {Ribbons::Kind::ordinary, "all else"},
    };
    double x = 0;
    for (const auto& [kind, meaning] : meanings) {
        const auto is_kind = [kind = kind](const Ribbons::Flow& flow) { return flow.kind == kind; };
        const bool present =
            std::any_of(chart.steps.begin(), chart.steps.end(), [&](const Ribbons::Step& step) {
                return std::any_of(step.inputs.begin(), step.inputs.end(), is_kind) ||
                       std::any_of(step.outputs.begin(), step.outputs.end(), is_kind);
            });
        if (!present) continue;
        const double entry = 21 + text_width(meaning, 10.5) + 14;
        if (x > 0 && x + entry > width) {
            x = 0;
            y += 17;
        }
        canvas.rect(x, y, 16, 11, ribbon_paint(kind));
        canvas.text(x + 21, y + 9.8, meaning, {.size = 10.5, .fill = palette::quiet});
        x += entry;
    }
    canvas.grow_height(y + 16);
}

} // namespace

Canvas draw(const Ribbons& chart, const std::string& name, double width) {
    Canvas canvas(name, width);
    const RibbonLayout layout = layout_ribbons(chart, width);
    const Across at = across(width);
    const Lettering head{.size = 10.5, .fill = palette::quiet};
    canvas.text(0, 11, "goes in", head);
    canvas.text(width / 2, 11, chart.unit, {.size = 10.5, .fill = palette::quiet, .anchor = Anchor::middle});
    canvas.text(width, 11, "comes out", {.size = 10.5, .fill = palette::quiet, .anchor = Anchor::end});
    for (const RibbonPanel& panel : layout.panels) {
        canvas.line(0, panel.top - 3, width, panel.top - 3, {.stroke = palette::rule});
        double line = panel.top + 13;
        for (const std::string& words : panel.heading) {
            canvas.text(0, line, words, {.size = ribbon::heading_size, .bold = true});
            line += 15;
        }
        draw_side(canvas, panel.inputs, at, true);
        draw_side(canvas, panel.outputs, at, false);
        canvas.rect(at.block, panel.block_top, block_width, std::max(panel.block_height, 1.0),
                    {.fill = palette::blues[1]});
    }
    draw_legend(canvas, chart, width, layout.height);
    return canvas;
}

} // namespace routeweigh::writing
