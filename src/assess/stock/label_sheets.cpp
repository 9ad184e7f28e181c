// SPDX-License-Identifier: MIT
#include "assess/stock/label_sheets.hpp"

#include "assess/streams/scheme_file.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::stock {
namespace {

constexpr double rounding = 0.05; ///< mm by which printed sizes may miss each other

double length_of(const Field& field, bool may_be_zero) {
    const double length = field.number();
    if (length < 0 || (length == 0 && !may_be_zero) || length > 1000)
        field.problem(fmt::format("is no length in mm up to 1000"));
    return length;
}

LabelSheetSize read_sheet(const Field& row) {
    LabelSheetSize sheet;
    sheet.name = row["name"].text();
    sheet.paper = row["paper"].text();
    sheet.paper_width = length_of(row["paper_width"], false);
    sheet.paper_height = length_of(row["paper_height"], false);
    sheet.columns = row["columns"].integer(1, 50);
    sheet.rows = row["rows"].integer(1, 50);
    sheet.width = length_of(row["width"], false);
    sheet.height = length_of(row["height"], false);
    sheet.left = length_of(row["left"], true);
    sheet.top = length_of(row["top"], true);
    sheet.across = length_of(row["across"], false);
    sheet.down = length_of(row["down"], false);
    const double right = sheet.left + (sheet.columns - 1) * sheet.across + sheet.width;
    const double bottom = sheet.top + (sheet.rows - 1) * sheet.down + sheet.height;
    if (right > sheet.paper_width + rounding)
        row["width"].problem(
            fmt::format("the labels end at {:g} mm, the paper at {:g} mm", right, sheet.paper_width));
    if (bottom > sheet.paper_height + rounding)
        row["height"].problem(
            fmt::format("the labels end at {:g} mm, the paper at {:g} mm", bottom, sheet.paper_height));
    if (sheet.columns > 1 && sheet.across < sheet.width - rounding)
        row["across"].problem("labels lie over each other");
    if (sheet.rows > 1 && sheet.down < sheet.height - rounding)
        row["down"].problem("labels lie over each other");
    row.close();
    return sheet;
}

} // namespace

std::vector<LabelSheetSize> read_label_sheets(const Source& source) {
    const streams::SchemeFile file(source, "label sheets");
    std::vector<LabelSheetSize> sheets;
    for (const Field& row : file.root()["sheets"].items()) {
        LabelSheetSize sheet = read_sheet(row);
        if (std::any_of(sheets.begin(), sheets.end(),
                        [&](const LabelSheetSize& other) { return other.name == sheet.name; }))
            row["name"].problem(fmt::format("two sheets are called \"{}\"", sheet.name));
        sheets.push_back(std::move(sheet));
    }
    if (sheets.empty()) file.root()["sheets"].problem("there is no sheet");
    file.finish();
    return sheets;
}

} // namespace routeweigh::stock
