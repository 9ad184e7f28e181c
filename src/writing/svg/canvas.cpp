// SPDX-License-Identifier: MIT
#include "writing/svg/canvas.hpp"

#include "writing/escape.hpp"
#include "writing/utf8.hpp"
#include "writing/wrap.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {
namespace {

/// Advance of a character as a share of the font size; rounded up from common sans-serif faces.
double advance(char32_t c) {
    static constexpr std::string_view slim = "ijl.,;:'!|()[]";
    static constexpr std::string_view broad = "mwMW@%";
    if (c >= 0x2E80) return 1.05;
    if (c == 0xA0) return 0.36;
    if (c >= 0x80) return 0.66;
    const char letter = static_cast<char>(c);
    if (slim.find(letter) != std::string_view::npos) return 0.34;
    if (broad.find(letter) != std::string_view::npos) return 0.92;
    if (letter == ' ' || letter == 'f' || letter == 't' || letter == 'r' || letter == 'I' || letter == '-')
        return 0.36;
    if (letter >= 'A' && letter <= 'Z') return 0.73;
    return 0.59;
}

std::string number(double value) {
    std::string text = fmt::format("{:.2f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

} // namespace

bool overlap(const LabelBox& a, const LabelBox& b) {
    return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

double text_width(std::string_view text, double size, bool bold) {
    double width = 0;
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint next = decode(text, at);
        width += advance(next.valid ? next.value : U'?');
        at += next.bytes;
    }
    return width * size * (bold ? 1.08 : 1.0);
}

std::vector<std::string> wrap_measured(std::string_view text, double width, double size, bool bold) {
    const std::string words = hold_per_cent(clean(text));
    std::vector<std::string> lines(1);
    const auto fits = [&](const std::string& line) { return text_width(line, size, bold) <= width; };
    const auto add_cut = [&](const std::string& word) {
        for (std::size_t i = 0; i < word.size();) {
            const std::string letter = word.substr(i, decode(word, i).bytes);
            if (!lines.back().empty() && !fits(lines.back() + letter)) lines.emplace_back();
            lines.back() += letter;
            i += letter.size();
        }
    };
    for (std::size_t at = 0; at < words.size();) {
        const std::size_t end = std::min(words.find(' ', at), words.size());
        std::string word = words.substr(at, end - at);
        at = end + 1;
        if (word.empty()) continue;
        const std::string joined = lines.back().empty() ? word : lines.back() + ' ' + word;
        if (fits(joined)) {
            lines.back() = joined;
            continue;
        }
        if (!lines.back().empty()) lines.emplace_back();
        // A name too long for a line is parted after a hyphen when it has one, else wherever the line is
        // full.
        for (std::size_t hyphen = word.rfind('-'); !fits(word) && hyphen != std::string::npos && hyphen > 0;
             hyphen = word.rfind('-', hyphen - 1)) {
            const std::string start = word.substr(0, hyphen + 1);
            if (!fits(start) || start.size() == word.size()) continue;
            lines.back() += start;
            lines.emplace_back();
            word.erase(0, start.size());
            hyphen = word.size();
        }
        add_cut(word);
    }
    return lines;
}

std::string Canvas::attributes(const Paint& paint) {
    std::string text;
    if (paint.hatched) {
        uses_hatch_ = true;
        text += fmt::format(" fill=\"url(#{}-water)\"", name_);
    } else {
        text += fmt::format(" fill=\"{}\"", paint.fill);
    }
    if (paint.stroke != "none") {
        text += fmt::format(" stroke=\"{}\" stroke-width=\"{}\"", paint.stroke, number(paint.stroke_width));
    }
    if (!paint.dash.empty()) text += fmt::format(" stroke-dasharray=\"{}\"", paint.dash);
    if (paint.arrow) {
        uses_arrow_ = true;
        text += fmt::format(" marker-end=\"url(#{}-arrow)\"", name_);
    }
    return text;
}

void Canvas::rect(double x, double y, double width, double height, const Paint& paint, double radius) {
    body_ += fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"", number(x), number(y),
                         number(width), number(height));
    if (radius > 0) body_ += fmt::format(" rx=\"{}\"", number(radius));
    body_ += attributes(paint) + "/>\n";
}

void Canvas::line(double x1, double y1, double x2, double y2, const Paint& paint) {
    body_ += fmt::format("<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"", number(x1), number(y1), number(x2),
                         number(y2)) +
             attributes(paint) + "/>\n";
}

void Canvas::circle(double x, double y, double radius, const Paint& paint) {
    body_ += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"", number(x), number(y), number(radius)) +
             attributes(paint) + "/>\n";
}

void Canvas::path(std::string_view data, const Paint& paint) {
    body_ += fmt::format("<path d=\"{}\"", data) + attributes(paint) + "/>\n";
}

void Canvas::text(double x, double y, std::string_view words, const Lettering& lettering) {
    if (words.empty()) return;
    const double width = text_width(words, lettering.size, lettering.bold);
    const double left = lettering.anchor == Anchor::start    ? x
                        : lettering.anchor == Anchor::middle ? x - width / 2
                                                             : x - width;
    labels_.push_back({left, y - 0.8 * lettering.size, width, lettering.size, std::string(words)});
    grow_width(left + width);
    static constexpr std::string_view anchors[] = {"start", "middle", "end"};
    body_ += fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\" fill=\"{}\"", number(x), number(y),
                         number(lettering.size), lettering.fill);
    if (lettering.anchor != Anchor::start) {
        body_ += fmt::format(" text-anchor=\"{}\"", anchors[static_cast<std::size_t>(lettering.anchor)]);
    }
    if (lettering.bold) body_ += " font-weight=\"600\"";
    if (lettering.halo) body_ += " stroke=\"#ffffff\" stroke-width=\"3\" paint-order=\"stroke\"";
    body_ += ">" + html_escape(words) + "</text>\n";
}

void Canvas::grow_height(double height) {
    height_ = std::max(height_, height);
}

void Canvas::grow_width(double width) {
    width_ = std::max(width_, width);
}

std::string Canvas::svg(std::string_view title, std::string_view description) const {
    std::string text =
        fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\" width=\"{0}\" "
                    "height=\"{1}\" role=\"img\" aria-labelledby=\"{2}-title {2}-desc\">\n",
                    number(std::ceil(width_)), number(std::ceil(height_)), name_);
    text += fmt::format("<title id=\"{0}-title\">{1}</title>\n<desc id=\"{0}-desc\">{2}</desc>\n", name_,
                        html_escape(title), html_escape(description));
    if (uses_hatch_ || uses_arrow_) text += "<defs>\n";
    if (uses_hatch_) {
        text += fmt::format(
            "<pattern id=\"{}-water\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" "
            "patternTransform=\"rotate(45)\"><rect width=\"6\" height=\"6\" fill=\"#ffffff\"/>"
            "<line x1=\"1\" y1=\"0\" x2=\"1\" y2=\"6\" stroke=\"{}\" stroke-width=\"1.3\"/></pattern>\n",
            name_, palette::blues[2]);
    }
    if (uses_arrow_) {
        text += fmt::format(
            "<marker id=\"{}-arrow\" viewBox=\"0 0 8 8\" refX=\"7.5\" refY=\"4\" markerWidth=\"8\" "
            "markerHeight=\"8\" markerUnits=\"userSpaceOnUse\" orient=\"auto\">"
            "<path d=\"M0 0.8 L8 4 L0 7.2 Z\" fill=\"{}\"/></marker>\n",
            name_, palette::quiet);
    }
    if (uses_hatch_ || uses_arrow_) text += "</defs>\n";
    return text + body_ + "</svg>\n";
}

} // namespace routeweigh::writing
