// SPDX-License-Identifier: MIT
// Sheets of labels: a data file of sizes in mm.
#pragma once

#include "input/source.hpp"

#include <string>
#include <vector>

namespace routeweigh::stock {

/// Lengths in mm. left and top lead to the first label; across and down from label to label.
struct LabelSheetSize {
    std::string name, paper;
    double paper_width = 0, paper_height = 0;
    int columns = 0, rows = 0;
    double width = 0, height = 0, left = 0, top = 0, across = 0, down = 0;
};

/// \throws InputError with every problem of the file: a length that is none, labels beside the paper or over
/// each other, two sheets of one name
std::vector<LabelSheetSize> read_label_sheets(const Source& source);

} // namespace routeweigh::stock
