// SPDX-License-Identifier: MIT
#include "cli/xlsx_file.hpp"

#include "cli/files.hpp"
#include "cli/xlsx_library.hpp"
#include "writing/escape.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <utility>

namespace routeweigh::cli {
namespace {

using writing::CellUse;
using writing::SheetCell;

void require(const XlsxLibrary& xlsx, lxw_error error, const std::string& what) {
    if (error != LXW_NO_ERROR)
        throw FileError(fmt::format("cannot make the workbook, {}: {}", what, xlsx.lxw_strerror(error)));
}

/// A folder of its own that goes when it is no longer needed.
class TemporaryFolder {
  public:
    TemporaryFolder() : path_((std::filesystem::temp_directory_path() / "routeweigh-XXXXXX").string()) {
        if (::mkdtemp(path_.data()) == nullptr)
            throw FileError(fmt::format("cannot make the workbook: no folder can be made in {}",
                                        std::filesystem::temp_directory_path().string()));
    }
    ~TemporaryFolder() {
        std::error_code error; // a folder that stays is no reason to fail
        std::filesystem::remove_all(path_, error);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    const std::string& path() const { return path_; }

  private:
    std::string path_;
};

/// The formats of a workbook, one for each use and number format.
class Formats {
  public:
    Formats(const XlsxLibrary& xlsx, lxw_workbook* book) : xlsx_(xlsx), book_(book) {}

    lxw_format* find(CellUse use, const std::string& number_format) {
        lxw_format*& format = formats_[{use, number_format}];
        if (format == nullptr) format = make(use, number_format);
        return format;
    }

  private:
    lxw_format* make(CellUse use, const std::string& number_format) {
        lxw_format* format = xlsx_.workbook_add_format(book_);
        if (!number_format.empty()) xlsx_.format_set_num_format(format, number_format.c_str());
        switch (use) {
        case CellUse::text:
        case CellUse::result:
            break;
        case CellUse::title:
            xlsx_.format_set_bold(format);
            xlsx_.format_set_font_size(format, 14);
            break;
        case CellUse::heading:
            xlsx_.format_set_bold(format);
            xlsx_.format_set_bottom(format, LXW_BORDER_THIN);
            xlsx_.format_set_text_wrap(format);
            xlsx_.format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
            break;
        case CellUse::input: // framed as well as tinted, so that it is seen in grey print
            xlsx_.format_set_border(format, LXW_BORDER_THIN);
            xlsx_.format_set_bg_color(format, 0xFFF6D6);
            break;
        case CellUse::note:
            xlsx_.format_set_italic(format);
            xlsx_.format_set_font_color(format, 0x444444);
            break;
        }
        return format;
    }

    const XlsxLibrary& xlsx_;
    lxw_workbook* book_;
    std::map<std::pair<CellUse, std::string>, lxw_format*> formats_;
};

void write_cell(const XlsxLibrary& xlsx, lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column,
                const SheetCell& cell, Formats& formats) {
    lxw_format* format = formats.find(cell.use, cell.number_format);
    const double* number = std::get_if<double>(&cell.value);
    const bool known = number != nullptr && std::isfinite(*number);
    lxw_error error = LXW_NO_ERROR;
    if (!cell.formula.empty())
        error = xlsx.worksheet_write_formula_num(sheet, row, column, cell.formula.c_str(), format,
                                                 known ? *number : 0.0);
    else if (known)
        error = xlsx.worksheet_write_number(sheet, row, column, *number, format);
    else if (const auto* text = std::get_if<std::string>(&cell.value))
        error = xlsx.worksheet_write_string(sheet, row, column, writing::clean(*text).c_str(), format);
    else
        error = xlsx.worksheet_write_blank(sheet, row, column, format);
    require(xlsx, error, fmt::format("row {}, column {}", row + 1, column + 1));
}

void write_sheet(const XlsxLibrary& xlsx, lxw_workbook* book, const writing::Sheet& sheet, Formats& formats) {
    lxw_worksheet* target = xlsx.workbook_add_worksheet(book, sheet.name.c_str());
    if (target == nullptr)
        throw std::runtime_error(fmt::format("no sheet of a workbook can be called \"{}\"", sheet.name));
    lxw_col_t column = 0;
    for (const double width : sheet.widths) {
        require(xlsx, xlsx.worksheet_set_column(target, column, column, width, nullptr), sheet.name);
        ++column;
    }
    if (sheet.frozen_rows > 0)
        xlsx.worksheet_freeze_panes(target, static_cast<lxw_row_t>(sheet.frozen_rows), 0);
    xlsx.worksheet_set_landscape(target);
    xlsx.worksheet_fit_to_pages(target, 1, 0);
    for (std::size_t row = 0; row < sheet.rows.size(); ++row)
        for (std::size_t cell = 0; cell < sheet.rows[row].size(); ++cell)
            write_cell(xlsx, target, static_cast<lxw_row_t>(row), static_cast<lxw_col_t>(cell),
                       sheet.rows[row][cell], formats);
}

/// The library keeps its own copies of these texts.
void set_properties(const XlsxLibrary& xlsx, lxw_workbook* book, const writing::Workbook& workbook) {
    std::string title = writing::clean(workbook.title), subject = writing::clean(workbook.subject),
                comments = writing::clean(workbook.comments);
    lxw_doc_properties properties{};
    properties.title = title.data();
    properties.subject = subject.data();
    properties.comments = comments.data();
    properties.created = 1577836800; // 2020-01-01: a fixed date, so that the same input gives the same file
    xlsx.workbook_set_properties(book, &properties);
}

} // namespace

std::string xlsx_bytes(const writing::Workbook& workbook) {
    const XlsxLibrary xlsx;
    const TemporaryFolder folder;
    const std::string path = folder.path() + "/workbook.xlsx";
    lxw_workbook_options options{};
    std::string temporary = folder.path();
    options.tmpdir = temporary.data();
    lxw_workbook* book = xlsx.workbook_new_opt(path.c_str(), &options);
    if (book == nullptr) throw FileError("cannot make the workbook: none could be begun");
    set_properties(xlsx, book, workbook);
    Formats formats(xlsx, book);
    for (const writing::Sheet& sheet : workbook.sheets)
        write_sheet(xlsx, book, sheet, formats);
    require(xlsx, xlsx.workbook_close(book), "closing");
    std::stringstream bytes;
    bytes << std::ifstream(path, std::ios::binary).rdbuf();
    return bytes.str();
}

} // namespace routeweigh::cli
