// SPDX-License-Identifier: MIT
// A workbook as plain data: sheets of cells that may hold live formulas.
//
// Documents build these values; the command line turns them into a file that spreadsheet
// programs open.
#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace routeweigh::writing {

enum class CellUse {
    text,
    heading, ///< heads a column or a group of rows
    title,   ///< heads the sheet
    input,   ///< meant to be changed by the reader; marked by colour and frame
    result,  ///< follows from other cells
    note,    ///< small print, runs on over the cells to its right
};

/// One cell. With a formula the value is what the formula gives at the amounts as written, so that a program
/// which does not recompute shows the right number too.
struct SheetCell {
    std::variant<std::monostate, double, std::string> value; ///< a number that is not finite stays empty
    std::string formula = {};                                ///< "=SUM(B2:B9)"; empty: a plain value
    CellUse use = CellUse::text;
    std::string number_format = {}; ///< "0.00"; empty: as the spreadsheet likes

    static SheetCell words(std::string text, CellUse use = CellUse::text) {
        return {std::move(text), {}, use, {}};
    }
    static SheetCell number(double value, CellUse use = CellUse::result, std::string format = {}) {
        return {value, {}, use, std::move(format)};
    }
    static SheetCell live(std::string formula, double value, std::string format = {}) {
        return {value, std::move(formula), CellUse::result, std::move(format)};
    }
};

struct Sheet {
    std::string name;           ///< at most 31 characters, none of []:*?/\ and no apostrophe at an end
    std::vector<double> widths; ///< of the columns, in characters
    std::vector<std::vector<SheetCell>> rows;
    int frozen_rows = 0; ///< stay in sight when the sheet is scrolled

    /// \return the number of the new row as formulas name it, from 1
    int add(std::vector<SheetCell> row) {
        rows.push_back(std::move(row));
        return static_cast<int>(rows.size());
    }
};

struct Workbook {
    std::string title, subject, comments; ///< properties of the file
    std::vector<Sheet> sheets;
};

/// "C7" for column 2 (from 0) and row 7 (from 1).
std::string cell_name(int column, int row);

/// "'Amounts'!$C$7", which other sheets understand.
std::string cell_name(const Sheet& sheet, int column, int row);

/// "'Amounts'!$C$7:$C$19".
std::string column_range(const Sheet& sheet, int column, int first_row, int last_row);

} // namespace routeweigh::writing
