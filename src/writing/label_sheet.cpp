// SPDX-License-Identifier: MIT
#include "writing/label_sheet.hpp"

#include "writing/escape.hpp"
#include "writing/svg/canvas.hpp"
#include "writing/svg/pictogram.hpp"
#include "writing/wrap.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {
namespace {

constexpr double pixels_per_mm = 96 / 25.4; // CSS
constexpr double pixels_per_point = 96.0 / 72;
constexpr double padding = 1.5;                        // mm, as in the style sheet
constexpr double leading = 1.15;                       // as in the style sheet
constexpr double largest_text = 13, smallest_text = 5; // points
// A square on its corner of this height has 1.1 cm2; CLP, Annex I, 1.2.1, asks for 1 cm2 (from memory).
constexpr double small_pictogram = 15, large_pictogram = 20; // mm
constexpr double label_gap = 0.5;                            // mm between pictograms

std::string foot_text(const LabelSheet::Label& label) {
    std::string text;
    for (const std::string& line : label.foot)
        text += (text.empty() ? "" : " \u00B7 ") + line;
    return text;
}

/// Height in mm of text set to this width in mm.
double text_height(const std::string& text, double width, double points, bool bold = false) {
    if (text.empty()) return 0;
    const double size = points * pixels_per_point;
    const auto lines = wrap_measured(text, width * pixels_per_mm, size, bold).size();
    return static_cast<double>(lines) * leading * size / pixels_per_mm;
}

double words_height(const LabelSheet::Label& label, double width, double points) {
    return text_height(label.heading, width, points, true) +
           text_height(label.name, width, 1.2 * points, true) + text_height(label.contents, width, points) +
           text_height(label.signal, width, points, true) + text_height(label.statements, width, points) +
           text_height(foot_text(label), width, points);
}

int columns_of(double room, double side) {
    return static_cast<int>(std::floor((room + label_gap) / (side + label_gap)));
}

double stack(int rows, double side) {
    return rows == 0 ? 0 : rows * (side + label_gap) - label_gap;
}

/// Width in mm of the pictograms that stand beside the text.
double marks_width(std::size_t count, double height, double side) {
    const int in_column = std::max(1, columns_of(height, side));
    const int columns = (static_cast<int>(count) + in_column - 1) / in_column;
    return stack(columns, side);
}

std::string marks_markup(const LabelSheet::Label& label, const LabelFit& fit, const std::string& id,
                         double height) {
    if (label.pictograms.empty()) return {};
    std::string markup = "<div class=\"marks\"";
    if (fit.beside)
        markup += fmt::format(" style=\"width:{:.2f}mm\"",
                              marks_width(label.pictograms.size(), height, fit.pictogram) + 0.01);
    markup += ">";
    int number = 0;
    for (const std::string& code : label.pictograms)
        if (const Pictogram* pictogram = find_pictogram(code))
            markup +=
                pictogram_svg(*pictogram, fmt::format("{}-{}", id, ++number), fit.pictogram * pixels_per_mm);
    return markup + "</div>";
}

std::string paragraph(const std::string& text, const char* kind) {
    return text.empty() ? std::string()
                        : fmt::format("<p class=\"{}\">{}</p>", kind, html_escape(hold_per_cent(text)));
}

std::string label_markup(const LabelSheet::Label& label, const LabelSheet& sheet, const std::string& id) {
    const LabelFit fit = fit_label(label, sheet.width, sheet.height);
    if (!fit.fits)
        return "<div class=\"words\">" + paragraph(label.name, "what") +
               paragraph("The text does not fit: print this one on a larger label.", "overfull") + "</div>";
    const std::string marks = marks_markup(label, fit, id, sheet.height - 2 * padding);
    const std::string head = paragraph(label.heading, "kind") + paragraph(label.name, "what") +
                             paragraph(label.contents, "contents") + paragraph(label.signal, "signal");
    const std::string tail = paragraph(label.statements, "statements") + paragraph(foot_text(label), "foot");
    if (fit.beside) return "<div class=\"words\">" + head + tail + "</div>" + marks;
    return head + marks + tail;
}

} // namespace

LabelFit fit_label(const LabelSheet::Label& label, double width, double height) {
    const double room = width - 2 * padding, tall = height - 2 * padding;
    LabelFit fit;
    fit.pictogram = height >= 60 ? large_pictogram : small_pictogram;
    const std::size_t count = label.pictograms.size();
    // Beside the text first, whatever its size: labels of one sheet are read faster when all look alike.
    const double left = room - marks_width(count, tall, fit.pictogram) - 1;
    fit.beside = count > 0 && fit.pictogram <= tall && left > 20;
    for (fit.points = largest_text; fit.beside && fit.points >= smallest_text; fit.points -= 0.5)
        if (fit.fits = words_height(label, left, fit.points) <= tall; fit.fits) return fit;
    fit.beside = false;
    const int across = std::max(1, columns_of(room, fit.pictogram));
    const double below = stack((static_cast<int>(count) + across - 1) / across, fit.pictogram);
    if (fit.pictogram <= room || count == 0)
        for (fit.points = largest_text; fit.points >= smallest_text; fit.points -= 0.5)
            if (fit.fits = words_height(label, room, fit.points) + below <= tall; fit.fits) return fit;
    fit.points = smallest_text;
    return fit;
}

std::string label_page_rules(const LabelSheet& sheet) {
    return fmt::format("@page {{ size: {:g}mm {:g}mm; margin: 0; @bottom-right {{ content: none; }} }}\n"
                       "@media print {{ .label-sheet {{ width: {:g}mm; height: {:g}mm; }} }}\n",
                       sheet.paper_width, sheet.paper_height, sheet.paper_width, sheet.paper_height);
}

std::string html_labels(const LabelSheet& sheet) {
    const int on_sheet = std::max(1, sheet.columns * sheet.rows);
    std::string html;
    int place = std::clamp(sheet.skip, 0, on_sheet - 1);
    int number = 0;
    bool open = false;
    for (const LabelSheet::Label& label : sheet.labels) {
        if (!open)
            html += fmt::format("<section class=\"label-sheet\" style=\"width:{:g}mm;height:{:g}mm\">\n",
                                sheet.paper_width, sheet.paper_height);
        open = true;
        const LabelFit fit = fit_label(label, sheet.width, sheet.height);
        const int row = place / sheet.columns;
        html += fmt::format(
            "<div class=\"label{}\" style=\"left:{:.2f}mm;top:{:.2f}mm;width:{:.2f}mm;height:{:.2f}mm;"
            "font-size:{:g}pt\">{}</div>\n",
            fit.fits && fit.beside ? " beside" : "", sheet.left + place % sheet.columns * sheet.across,
            sheet.top + row * sheet.down, sheet.width, sheet.height, std::max(fit.points, smallest_text),
            label_markup(label, sheet, fmt::format("label-{}", ++number)));
        if (++place < on_sheet) continue;
        place = 0;
        open = false;
        html += "</section>\n";
    }
    return open ? html + "</section>\n" : html;
}

std::vector<std::pair<const LabelSheet::Label*, int>> distinct_labels(const LabelSheet& sheet) {
    std::vector<std::pair<const LabelSheet::Label*, int>> distinct;
    for (const LabelSheet::Label& label : sheet.labels) {
        if (!distinct.empty() && *distinct.back().first == label)
            ++distinct.back().second;
        else
            distinct.emplace_back(&label, 1);
    }
    return distinct;
}

std::vector<std::string> label_lines(const LabelSheet::Label& label) {
    std::vector<std::string> lines;
    const auto add = [&](std::string line) {
        if (!line.empty()) lines.push_back(std::move(line));
    };
    add(label.heading);
    add(label.contents);
    std::string marks = label.signal;
    for (const std::string& code : label.pictograms)
        marks += (marks.empty() ? "" : marks == label.signal ? ": " : ", ") + pictogram_words(code);
    add(marks);
    add(label.statements);
    for (const std::string& line : label.foot)
        add(line);
    return lines;
}

} // namespace routeweigh::writing
