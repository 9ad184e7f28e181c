// SPDX-License-Identifier: MIT
#include "writing/escape.hpp"
#include "writing/html_text.hpp"
#include "writing/svg/canvas.hpp"
#include "writing/table_layout.hpp"
#include "writing/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {
namespace {

/// Width of the printed page between its margins on the narrower of A4 and Letter, and the letter size of
/// wide tables on it, in CSS pixels; on both sides of a cell is the gap of wide tables.
constexpr int page_width = 680;
constexpr double print_size = 10;
constexpr double print_padding = 2 * 0.85 / 25.4 * 96;
constexpr std::size_t most_short_rows =
    6; // of a table that is not parted between sheets, and the lines in them
constexpr double most_short_lines = 12;
constexpr int blank_width = 77; // 20.3 mm; a number written by hand takes 20

std::string note_mark(const TableNotes& notes, const std::string& note) {
    return note.empty() ? std::string() : "<sup class=\"note\">" + notes.letter(note) + "</sup>";
}

/// `longest` is the longest text of the column, in characters: a column of words is not squeezed to single
/// words.
std::string head_cell(const Column& column, int longest, const TableNotes& notes) {
    std::string classes = column.align != Align::left ? "num"
                          : longest > 40              ? "sentences"
                          : longest > 16              ? "words"
                                                      : "";
    if (column.baseline) classes += classes.empty() ? "base" : " base";
    std::string html = "<th scope=\"col\"" + (classes.empty() ? "" : " class=\"" + classes + "\"") + ">" +
                       html_escape(column.heading) + note_mark(notes, column.note);
    if (column.baseline) html += "<span class=\"tag\">baseline</span>";
    if (!column.unit.empty()) html += "<span class=\"unit\">" + html_escape(column.unit) + "</span>";
    return html + "</th>";
}

/// The room that a number leaves free for the decimals of its neighbours, in halves of a digit; a decimal
/// point takes half a digit in the type used.
int free_halves(std::string_view text, int most_decimals) {
    const int decimals = decimals_after(text);
    return most_decimals == 0 ? 0 : 2 * (most_decimals - decimals) + (decimals == 0 ? 1 : 0);
}

/// Letters that path data may hold; anything else would be markup, not a picture.
bool is_path_data(std::string_view path) {
    return path.find_first_not_of("MLHVCSQTAZ0123456789 .,-") == std::string_view::npos;
}

std::string drawing_markup(const LineDrawing& drawing) {
    if (!is_path_data(drawing.lines) || !is_path_data(drawing.shapes)) return {};
    return fmt::format("<svg class=\"drawing\" role=\"img\" aria-label=\"{}\" width=\"{:.0f}\" "
                       "height=\"{:.0f}\" viewBox=\"0 0 {:.0f} {:.0f}\"><path d=\"{}\" fill=\"none\" "
                       "stroke=\"currentColor\" stroke-width=\"{:.1f}\"/><path d=\"{}\" "
                       "fill=\"currentColor\"/></svg>",
                       html_escape(drawing.alternative), drawing.width * drawing.unit,
                       drawing.height * drawing.unit, drawing.width, drawing.height, drawing.lines,
                       drawing.pen, drawing.shapes);
}

class TableMarkup {
  public:
    TableMarkup(const Table& table, const TableNotes& notes) : table_(table), notes_(notes) {
        decimals_.resize(table.columns.size(), 0);
        longest_.resize(table.columns.size(), 0);
        for (const Row& row : table.rows) {
            if (row.kind == RowKind::group) continue;
            for (std::size_t i = 0; i < row.cells.size() && i < decimals_.size(); ++i) {
                decimals_[i] = std::max(decimals_[i], decimals_after(row.cells[i].text));
                longest_[i] = std::max(longest_[i], display_width(row.cells[i].text));
            }
        }
    }

    std::string markup(std::string_view caption) const {
        const bool wide = table_.columns.size() > 7;
        std::string html = fmt::format("<table class=\"{}{}\">\n", stays_on_one_page() ? "short" : "long",
                                       wide ? " wide" : "");
        if (!caption.empty()) html += fmt::format("<caption><span>{}</span></caption>\n", caption);
        html += "<thead><tr>";
        for (std::size_t i = 0; i < table_.columns.size(); ++i)
            html += head_cell(table_.columns[i], longest_[i], notes_);
        html += "</tr></thead>\n<tbody>\n";
        bool body_empty = true;
        for (const Row& row : table_.rows) {
            if (row.kind == RowKind::group && !body_empty) html += "</tbody>\n<tbody>\n";
            html += row_markup(row);
            body_empty = false;
        }
        return html + "</tbody>\n</table>\n";
    }

  private:
    /// Moved as a whole to the next sheet, a table leaves a blank of its own height: so only small ones are.
    bool stays_on_one_page() const {
        if (table_.rows.size() > most_short_rows || !table_.drawings.empty()) return false;
        double lines =
            0; // as if the text of a row flowed over the whole width, which no row does better than
        for (const Row& row : table_.rows) {
            double width = 0;
            for (const Cell& cell : row.cells)
                width += text_width(cell.text, print_size) + print_padding;
            lines += std::max(1.0, std::ceil(width / page_width));
        }
        return lines <= most_short_lines;
    }

    std::string row_markup(const Row& row) const {
        if (row.kind == RowKind::group) {
            return fmt::format(
                "<tr class=\"group\"><th scope=\"rowgroup\" colspan=\"{}\"><span>{}</span></th></tr>\n",
                std::max<std::size_t>(table_.columns.size(), 1),
                row.cells.empty() ? std::string() : html_escape(row.cells[0].text));
        }
        std::string html = row.kind == RowKind::total      ? "<tr class=\"total\">"
                           : row.kind == RowKind::baseline ? "<tr class=\"base\">"
                           : row.kind == RowKind::detail   ? "<tr class=\"detail\">"
                                                           : "<tr>";
        for (std::size_t i = 0; i < table_.columns.size(); ++i) {
            html += cell_markup(row, i, i < row.cells.size() ? row.cells[i] : Cell());
        }
        return html + "</tr>\n";
    }

    std::string cell_markup(const Row& row, std::size_t index, const Cell& cell) const {
        const Column& column = table_.columns[index];
        std::string words = html_words(cell_words(cell, "\u2265", "\u2013"));
        if (!cell.target.empty()) words = "<a href=\"#" + html_anchor(cell.target) + "\">" + words + "</a>";
        words += note_mark(notes_, cell.note);
        std::string classes;
        const auto add_class = [&](const std::string& name) {
            classes += (classes.empty() ? "" : " ") + name;
        };
        if (column.align != Align::left) {
            add_class(display_width(cell.text) <= 20 ? "num" : "num long");
            const int halves = column.align == Align::decimal ? free_halves(cell.text, decimals_[index]) : 0;
            if (halves > 0) add_class(fmt::format("p{}", std::min(halves, 14)));
        }
        if (column.baseline) add_class("base");
        const bool named_baseline =
            cell.mark == Mark::baseline || (row.kind == RowKind::baseline && index == 0);
        if (named_baseline) words += "<span class=\"tag\">baseline</span>";
        if (cell.drawing >= 0 && static_cast<std::size_t>(cell.drawing) < table_.drawings.size())
            words += drawing_markup(table_.drawings[static_cast<std::size_t>(cell.drawing)]);
        const std::string attribute = classes.empty() ? "" : " class=\"" + classes + "\"";
        if (index == 0 && table_.row_headers) return "<th scope=\"row\"" + attribute + ">" + words + "</th>";
        return "<td" + attribute + ">" + words + "</td>";
    }

    const Table& table_;
    const TableNotes& notes_;
    std::vector<int> decimals_;
    std::vector<int> longest_;
};

/// A browser may break a line here: after a space, and after a hyphen that no digit follows.
std::size_t end_of_piece(std::string_view text, std::size_t at) {
    for (; at < text.size(); ++at) {
        if (text[at] == ' ') return at;
        if (text[at] == '-' && at + 1 < text.size() && (text[at + 1] < '0' || text[at + 1] > '9'))
            return at + 1;
    }
    return text.size();
}

/// The least width of each column on paper: numbers whole, words by their longest piece.
std::vector<int> print_widths(const Table& table) {
    std::vector<int> widths;
    const auto word_width = [](std::string_view text) {
        double longest = 0;
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = end_of_piece(text, at);
            longest = std::max(longest, text_width(text.substr(at, end - at), print_size));
            at = end + (end < text.size() && text[end] == ' ' ? 1 : 0);
        }
        return longest;
    };
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        double width = std::max(word_width(table.columns[i].heading), word_width(table.columns[i].unit));
        if (table.columns[i].baseline) width = std::max(width, text_width("baseline", 8));
        for (const Row& row : table.rows) {
            if (row.kind == RowKind::group || i >= row.cells.size()) continue;
            const std::string& text = row.cells[i].text;
            if (text.find(blank) != std::string::npos) width = std::max<double>(width, blank_width);
            const bool whole = table.columns[i].align != Align::left && display_width(text) <= 20;
            width = std::max(width, whole ? text_width(text, print_size) : word_width(text));
        }
        // A row header needs room to read, not just room for its longest word.
        if (i == 0 && table.row_headers) width = std::max(width, 90.0);
        widths.push_back(static_cast<int>(std::ceil(std::min(width, page_width / 2.0) + print_padding)));
    }
    return widths;
}

} // namespace

std::string html_table(const Table& table, std::string_view id, std::string_view caption) {
    const TableNotes notes(table);
    const auto parts = fit_columns(print_widths(table), 0, page_width, table.row_headers);
    const bool cut = parts.size() > 1;
    std::string html =
        fmt::format("<div class=\"table-block\" id=\"{}\">\n<div class=\"scroll{}\" role=\"region\" "
                    "tabindex=\"0\" aria-label=\"table, scrolls sideways when wide\">\n",
                    id, cut ? " on-screen" : "");
    html += TableMarkup(table, notes).markup(caption) + "</div>\n";
    if (cut) {
        // Paper does not scroll: there the table is cut by columns, each part with the row headers.
        html += "<div class=\"on-paper\" aria-hidden=\"true\">\n";
        bool first = true;
        for (const Table& part : split_columns(table, parts)) {
            html += TableMarkup(part, notes)
                        .markup(first ? std::string(caption) : fmt::format("{} (continued)", caption));
            first = false;
        }
        html += "</div>\n";
    }
    if (!table.remarks.empty() || !notes.notes().empty()) {
        html += "<div class=\"notes\">\n";
        for (const Text& remark : table.remarks)
            html += "<p>" + html_text(remark) + "</p>\n";
        for (std::size_t i = 0; i < notes.notes().size(); ++i) {
            html += fmt::format("<p><sup>{}</sup> {}</p>\n", TableNotes::letter_at(i),
                                html_escape(notes.notes()[i]));
        }
        html += "</div>\n";
    }
    return html + "</div>\n";
}

} // namespace routeweigh::writing
