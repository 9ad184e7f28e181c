// SPDX-License-Identifier: MIT
#include "writing/terminal_table.hpp"

#include "writing/escape.hpp"
#include "writing/table_layout.hpp"
#include "writing/utf8.hpp"
#include "writing/wrap.hpp"

#include <algorithm>
#include <numeric>

namespace routeweigh::writing {
namespace {

constexpr int column_gap = 2;
constexpr int text_column = 24; ///< what a column of words may take when the table must be cut

/// One column as it will be printed: the head, and for each row of the table a text already padded so that
/// decimal points stand below each other.
struct SetColumn {
    std::string heading;
    std::string unit;
    std::vector<std::string> cells;
    bool words = false;
    int natural = 0; ///< columns needed without any wrapping
    int least = 0;   ///< columns below which words would be cut
};

bool starts_like_number(std::string_view text) {
    return !text.empty() && std::string_view("0123456789.+-<>=").find(text.front()) != std::string_view::npos;
}

int longest_word(std::string_view text) {
    int longest = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        longest = std::max(longest, display_width(text.substr(at, end - at)));
        at = end + 1;
    }
    return longest;
}

int room_for_decimals(std::string_view text) {
    const int decimals = decimals_after(text);
    return decimals == 0 ? 0 : decimals + 1;
}

std::vector<std::string> aligned_cells(const Table& table, std::size_t index, const TableNotes& notes) {
    struct Pieces {
        std::string words;
        std::string note;
        bool whole = false; ///< ends at the edge of the column
    };
    std::vector<Pieces> pieces;
    int decimals = 0;
    int note_width = 0;
    for (const Row& row : table.rows) {
        Pieces& piece = pieces.emplace_back();
        if (row.kind == RowKind::group || index >= row.cells.size()) continue;
        const Cell& cell = row.cells[index];
        piece.words = clean(cell_words(cell, ">=", "-"));
        if (row.kind == RowKind::detail && index == 0) piece.words.insert(0, "  ");
        const bool marked = cell.mark == Mark::baseline || (row.kind == RowKind::baseline && index == 0);
        if (marked) piece.words += "*";
        if (!cell.note.empty()) piece.note = "[" + notes.letter(cell.note) + "]";
        if (cell.mark == Mark::missing) { // no number whose decimals the note would have to leave room for
            piece.words += piece.note.empty() ? "" : " " + piece.note;
            piece.whole = true;
            continue;
        }
        decimals = std::max(decimals, room_for_decimals(piece.words));
        note_width = std::max(note_width, display_width(piece.note));
    }
    const Align align = table.columns[index].align;
    std::vector<std::string> cells;
    for (const Pieces& piece : pieces) {
        std::string text = piece.words;
        if (piece.whole) {
            cells.push_back(std::move(text));
            continue;
        }
        if (align == Align::decimal && starts_like_number(text)) {
            text += std::string(static_cast<std::size_t>(decimals - room_for_decimals(text)), ' ');
        }
        if (align == Align::left) {
            if (!piece.note.empty()) text += " " + piece.note;
        } else if (note_width > 0) {
            text += pad_right(piece.note.empty() ? "" : " " + piece.note, note_width + 1);
        }
        cells.push_back(std::move(text));
    }
    return cells;
}

SetColumn set_column(const Table& table, std::size_t index, const TableNotes& notes) {
    const Column& column = table.columns[index];
    SetColumn set;
    set.heading = clean(column.heading) + (column.baseline ? "*" : "");
    if (!column.note.empty()) set.heading += " [" + notes.letter(column.note) + "]";
    set.unit = clean(column.unit);
    set.cells = aligned_cells(table, index, notes);
    set.words = column.align == Align::left;
    int cells = 0;
    int word = std::max(longest_word(set.heading), longest_word(set.unit));
    for (const std::string& cell : set.cells) {
        cells = std::max(cells, display_width(cell));
        if (set.words) word = std::max(word, longest_word(cell));
    }
    set.natural = std::max({cells, display_width(set.heading), display_width(set.unit), 1});
    set.least = set.words ? std::min(set.natural, std::clamp(word, 8, 18)) : std::max({cells, word, 1});
    return set;
}

/// Between the least and the natural width of each column, by what each would like to have more.
std::vector<int> share_width(const std::vector<SetColumn>& columns, int available) {
    std::vector<int> widths;
    int wished = 0;
    for (const SetColumn& column : columns) {
        widths.push_back(column.least);
        wished += column.natural - column.least;
    }
    available -= column_gap * (static_cast<int>(columns.size()) - 1);
    int spare = available - std::accumulate(widths.begin(), widths.end(), 0);
    while (spare < 0) { // a single column too wide for the page: words are cut
        const auto widest = std::max_element(widths.begin(), widths.end());
        if (*widest <= 1) break;
        --*widest;
        ++spare;
    }
    for (std::size_t i = 0; i < columns.size() && wished > 0 && spare > 0; ++i) {
        const int wish = columns[i].natural - columns[i].least;
        const int share = std::min(wish, (spare * wish + wished - 1) / wished);
        widths[i] += share;
        spare -= share;
        wished -= wish;
    }
    return widths;
}

using Lines = std::vector<std::string>;

std::string without_trailing_spaces(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
}

/// Sets the cells of one row side by side, each wrapped to its column.
Lines side_by_side(const Table& table, const std::vector<Lines>& cells, const std::vector<int>& widths,
                   bool at_bottom) {
    std::size_t height = 0;
    for (const Lines& cell : cells)
        height = std::max(height, cell.size());
    Lines lines;
    for (std::size_t i = 0; i < height; ++i) {
        std::string line;
        for (std::size_t column = 0; column < cells.size(); ++column) {
            const std::size_t skipped = at_bottom ? height - cells[column].size() : 0;
            const bool filled = i >= skipped && i - skipped < cells[column].size();
            const std::string text = filled ? cells[column][i - skipped] : std::string();
            if (column > 0) line += std::string(column_gap, ' ');
            const bool left = table.columns[column].align == Align::left;
            line += left ? pad_right(text, widths[column]) : pad_left(text, widths[column]);
        }
        lines.push_back(without_trailing_spaces(std::move(line)));
    }
    return lines;
}

Lines wrapped_cell(const std::string& text, int width) {
    if (display_width(text) <= width) return {text};
    return wrap_plain(text, width);
}

std::string rule(const std::vector<int>& widths) {
    std::string line;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        if (i > 0) line += std::string(column_gap, ' ');
        line += std::string(static_cast<std::size_t>(widths[i]), '-');
    }
    return line;
}

Lines set_part(const Table& part, const std::vector<SetColumn>& columns, int width, const Ink& ink) {
    const std::vector<int> widths = share_width(columns, width);
    Lines lines;
    std::vector<Lines> cells;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        cells.push_back(wrapped_cell(columns[i].heading, widths[i]));
        if (!columns[i].unit.empty()) {
            for (std::string& unit : wrapped_cell(columns[i].unit, widths[i]))
                cells.back().push_back(std::move(unit));
        }
    }
    for (const std::string& line : side_by_side(part, cells, widths, true))
        lines.push_back(ink.bold(line));
    lines.push_back(rule(widths));
    for (std::size_t row = 0; row < part.rows.size(); ++row) {
        if (part.rows[row].kind == RowKind::group) {
            const std::string words = part.rows[row].cells.empty() ? "" : part.rows[row].cells[0].text;
            if (row > 0) lines.emplace_back();
            for (const std::string& line : wrap_plain(words, width))
                lines.push_back(ink.bold(line));
            continue;
        }
        if (part.rows[row].kind == RowKind::total) lines.push_back(rule(widths));
        cells.clear();
        for (std::size_t i = 0; i < columns.size(); ++i) {
            cells.push_back(wrapped_cell(columns[i].cells[row], widths[i]));
        }
        for (std::string& line : side_by_side(part, cells, widths, false)) {
            lines.push_back(part.rows[row].kind == RowKind::total ? ink.bold(line) : std::move(line));
        }
    }
    return lines;
}

void add_notes(const Table& table, const TableNotes& notes, int width, const Ink& ink, Lines& lines) {
    const auto add = [&](const std::string& lead, const std::string& words) {
        const int indent = display_width(lead);
        bool first = true;
        for (const std::string& line : wrap_plain(words, width - indent)) {
            lines.push_back(
                ink.dim((first ? lead : std::string(static_cast<std::size_t>(indent), ' ')) + line));
            first = false;
        }
    };
    if (has_baseline(table)) add("* ", "baseline");
    for (const Text& remark : table.remarks)
        add("", plain(remark));
    for (std::size_t i = 0; i < notes.notes().size(); ++i) {
        add("[" + TableNotes::letter_at(i) + "] ", notes.notes()[i]);
    }
}

} // namespace

Lines terminal_table(const Table& table, int width, const Ink& ink) {
    const TableNotes notes(table);
    std::vector<SetColumn> columns;
    std::vector<int> widths;
    int least = 0;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        columns.push_back(set_column(table, i, notes));
        const SetColumn& column = columns.back();
        least += column.least + (i > 0 ? column_gap : 0);
        const int comfortable = std::max(column.least, std::min(column.natural, text_column));
        widths.push_back(std::min(column.words ? comfortable : column.least, width));
    }
    Lines lines;
    std::vector<std::vector<std::size_t>> parts;
    if (least <= width) {
        parts.emplace_back(columns.size());
        std::iota(parts[0].begin(), parts[0].end(), std::size_t{0});
    } else {
        parts = fit_columns(widths, column_gap, width, table.row_headers);
    }
    const std::vector<Table> tables = split_columns(table, parts);
    for (std::size_t part = 0; part < parts.size(); ++part) {
        std::vector<SetColumn> chosen;
        for (const std::size_t column : parts[part])
            chosen.push_back(columns[column]);
        if (part > 0) lines.emplace_back();
        for (std::string& line : set_part(tables[part], chosen, width, ink))
            lines.push_back(std::move(line));
    }
    add_notes(table, notes, width, ink, lines);
    return lines;
}

} // namespace routeweigh::writing
