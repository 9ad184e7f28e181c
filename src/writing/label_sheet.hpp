// SPDX-License-Identifier: MIT
// Prints sheets of labels: to the millimetre in HTML, as plain lines elsewhere.
#pragma once

#include "writing/blocks.hpp"

#include <string>
#include <utility>
#include <vector>

namespace routeweigh::writing {

/// The size of the paper and no margin, for the head of the page.
std::string label_page_rules(const LabelSheet& sheet);

/// One section for each sheet. A label whose text does not fit at 5 pt says so in place of its text, so that
/// no label is printed with a part of it.
std::string html_labels(const LabelSheet& sheet);

/// How a label is set; text in points.
struct LabelFit {
    bool fits = false;
    bool beside = false; ///< pictograms stand beside the text; below it only where they find no room there
    double points = 0;
    double pictogram = 0; ///< side in mm, its diamond has 1 cm2 at least
};
LabelFit fit_label(const LabelSheet::Label& label, double width, double height);

/// Equal labels that follow each other, once with their number.
std::vector<std::pair<const LabelSheet::Label*, int>> distinct_labels(const LabelSheet& sheet);

/// All that a label says below its name.
std::vector<std::string> label_lines(const LabelSheet::Label& label);

} // namespace routeweigh::writing
