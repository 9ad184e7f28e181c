// SPDX-License-Identifier: MIT
// Collects the shapes and labels of one picture and prints them as inline SVG.
//
// The canvas remembers the box of every label, so that tests can hold that labels do not overlap. Widths of
// text are estimates, on the wide side, since the reader's font is not known here.
#pragma once

#include "writing/svg/palette.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::writing {

enum class Anchor { start, middle, end };

struct Lettering {
    double size = 12;
    std::string_view fill = palette::ink;
    Anchor anchor = Anchor::start;
    bool bold = false;
    bool halo = false; ///< a white rim, for letters that stand on lines
};

struct Paint {
    std::string_view fill = "none";
    std::string_view stroke = "none";
    double stroke_width = 1;
    std::string_view dash = {};
    bool hatched = false; ///< the water hatch instead of `fill`
    bool arrow = false;   ///< an arrow head at the end of a path
};

struct LabelBox {
    double x = 0;
    double y = 0;
    double width = 0;
    double height = 0;
    std::string text;
};

bool overlap(const LabelBox& a, const LabelBox& b);

double text_width(std::string_view text, double size, bool bold = false);

/// Breaks at spaces so that no line is wider, in pixels; a word that is too long by itself is cut.
std::vector<std::string> wrap_measured(std::string_view text, double width, double size, bool bold = false);

class Canvas {
  public:
    /// `name` makes the ids inside the picture unique within the page.
    Canvas(std::string name, double width) : name_(std::move(name)), width_(width) {}

    void rect(double x, double y, double width, double height, const Paint& paint, double radius = 0);
    void line(double x1, double y1, double x2, double y2, const Paint& paint);
    void circle(double x, double y, double radius, const Paint& paint);
    void path(std::string_view data, const Paint& paint);

    /// `y` is the line on which the letters stand.
    void text(double x, double y, std::string_view words, const Lettering& lettering = {});

    void grow_height(double height);
    void grow_width(double width);
    double width() const { return width_; }
    double height() const { return height_; }
    const std::vector<LabelBox>& labels() const { return labels_; }

    /// The whole picture with its title and description for those who cannot see it.
    std::string svg(std::string_view title, std::string_view description) const;

  private:
    std::string attributes(const Paint& paint);

    std::string name_;
    double width_;
    double height_ = 0;
    std::string body_;
    bool uses_hatch_ = false;
    bool uses_arrow_ = false;
    std::vector<LabelBox> labels_;
};

} // namespace routeweigh::writing
