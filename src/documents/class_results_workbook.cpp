// SPDX-License-Identifier: MIT
#include "documents/class_results_workbook.hpp"

#include "documents/version.hpp"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace routeweigh {
namespace {

using results::KeptRow;
using writing::cell_name;
using writing::CellUse;
using writing::Sheet;
using writing::SheetCell;

enum ResultColumn { bench_column, section_column, mass_column, theory_column, yield_column, verdict_column };
constexpr int first_row = 14; // below the figures of the class

std::vector<SheetCell> row_cells(const KeptRow& row) {
    return {SheetCell::words(row.bench), SheetCell::words(row.section),
            row.judgement.mass
                ? SheetCell::number(*row.judgement.mass,
                                    row.judgement.is_counted() ? CellUse::input : CellUse::result, "0.000")
                : SheetCell{},
            SheetCell::number(row.judgement.theory, CellUse::result, "0.000")};
}

/// Quartiles go between two neighbours as the tally has them, and as spreadsheets do.
void add_spread(Sheet& sheet, const results::Spread& spread, int last) {
    struct Line {
        const char *name, *formula;
        double value;
        const char* format;
    };
    const std::array lines{
        Line{"results counted", "=COUNT({})", static_cast<double>(spread.count), "0"},
        Line{"mean, %", "=AVERAGE({})", spread.mean, "0.0"},
        Line{"standard deviation, points", "=IF(COUNT({0})>1,STDEV({0}),\"\")", spread.deviation, "0.0"},
        Line{"least, %", "=MIN({})", spread.least, "0.0"},
        Line{"lower quartile, %", "=QUARTILE({},1)", spread.quartile1, "0.0"},
        Line{"median, %", "=MEDIAN({})", spread.median, "0.0"},
        Line{"upper quartile, %", "=QUARTILE({},3)", spread.quartile3, "0.0"},
        Line{"most, %", "=MAX({})", spread.most, "0.0"}};
    const std::string range =
        fmt::format("{}:{}", cell_name(yield_column, first_row), cell_name(yield_column, last));
    for (const Line& line : lines)
        sheet.add({SheetCell::words(line.name), SheetCell{},
                   SheetCell::live(fmt::format(fmt::runtime(line.formula), range), line.value, line.format)});
}

Sheet results_sheet(const Route& route, const results::ClassResults& results) {
    Sheet sheet{"Results", {30, 14, 12, 14, 12, 22}, {}, first_row - 1};
    sheet.add({SheetCell::words("Results of " + results.file, CellUse::title)});
    sheet.add(
        {SheetCell::words(fmt::format("{}, route {}. Framed masses may be corrected; yields and their spread "
                                      "follow. Theoretical yields are those of the rows as read.",
                                      results.theory.product->name, route.id),
                          CellUse::note)});
    sheet.add({});
    std::vector<const KeptRow*> counted, others;
    for (const KeptRow& row : results.kept)
        (row.judgement.is_counted() ? counted : others).push_back(&row);
    if (counted.empty())
        sheet.add({SheetCell::words("No result is counted.")});
    else
        add_spread(sheet, results.all, first_row + static_cast<int>(counted.size()) - 1);
    sheet.add({});
    std::vector<SheetCell> headings;
    for (const char* words : {"bench", "section", "product, g", "theoretical, g", "yield, %", "to look at"})
        headings.push_back(SheetCell::words(words, CellUse::heading));
    sheet.add(std::move(headings));
    for (const KeptRow* row : counted) {
        const int number = static_cast<int>(sheet.rows.size()) + 1;
        std::vector<SheetCell> cells = row_cells(*row);
        cells.push_back(SheetCell::live(
            fmt::format("=100*{}/{}", cell_name(mass_column, number), cell_name(theory_column, number)),
            *row->judgement.yield, "0.0"));
        cells.push_back(SheetCell::words(std::string(words_of(row->judgement.verdict))));
        sheet.add(std::move(cells));
    }
    if (!others.empty()) sheet.add({SheetCell::words("Not counted", CellUse::heading)});
    for (const KeptRow* row : others) {
        std::vector<SheetCell> cells = row_cells(*row);
        cells.resize(verdict_column);
        cells.push_back(SheetCell::words(std::string(words_of(row->judgement.verdict))));
        sheet.add(std::move(cells));
    }
    sheet.add({});
    sheet.add({SheetCell::words(
        fmt::format("Made by routeweigh {} from the table of the class.", program_version()),
        CellUse::note)});
    return sheet;
}

} // namespace

writing::Workbook class_results_workbook(const Route& route, const results::ClassResults& results) {
    return {"Results of " + results.file,
            results.theory.product->name,
            "A finding names what the numbers show, never a student.",
            {results_sheet(route, results)}};
}

} // namespace routeweigh
