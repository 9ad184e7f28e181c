// SPDX-License-Identifier: MIT
#include "writing/table_layout.hpp"

#include <algorithm>

namespace routeweigh::writing {

TableNotes::TableNotes(const Table& table) {
    const auto add = [&](const std::string& note) {
        if (!note.empty() && std::find(notes_.begin(), notes_.end(), note) == notes_.end())
            notes_.push_back(note);
    };
    for (const Column& column : table.columns)
        add(column.note);
    for (const Row& row : table.rows) {
        for (const Cell& cell : row.cells)
            add(cell.note);
    }
}

std::string TableNotes::letter_at(std::size_t index) {
    std::string letters;
    for (std::size_t rest = index + 1; rest > 0; rest = (rest - 1) / 26) {
        letters.insert(letters.begin(), static_cast<char>('a' + (rest - 1) % 26));
    }
    return letters;
}

std::string TableNotes::letter(const std::string& note) const {
    const auto found = std::find(notes_.begin(), notes_.end(), note);
    if (note.empty() || found == notes_.end()) return {};
    return letter_at(static_cast<std::size_t>(found - notes_.begin()));
}

std::string cell_words(const Cell& cell, std::string_view at_least_sign, std::string_view missing_sign) {
    switch (cell.mark) {
    case Mark::at_least:
        return std::string(at_least_sign) + " " + cell.text;
    case Mark::missing:
        return cell.text.empty() ? std::string(missing_sign) : cell.text;
    case Mark::none:
    case Mark::baseline:
        break;
    }
    return cell.text;
}

int decimals_after(std::string_view text) {
    const auto point = text.find('.');
    if (point == std::string_view::npos) return 0;
    const std::string_view fraction = text.substr(point + 1);
    // Bytes of the true minus and of the no-break space among them.
    const bool digits_only =
        text.find_first_not_of("0123456789.+-<>= \xE2\x88\x92\xC2\xA0") == std::string_view::npos &&
        fraction.find_first_not_of("0123456789") == std::string_view::npos;
    return digits_only ? static_cast<int>(fraction.size()) : 0;
}

bool has_baseline(const Table& table) {
    const auto cell_marked = [](const Cell& cell) { return cell.mark == Mark::baseline; };
    return std::any_of(table.columns.begin(), table.columns.end(),
                       [](const Column& c) { return c.baseline; }) ||
           std::any_of(table.rows.begin(), table.rows.end(), [&](const Row& row) {
               return row.kind == RowKind::baseline ||
                      std::any_of(row.cells.begin(), row.cells.end(), cell_marked);
           });
}

std::vector<Table> split_columns(const Table& table, const std::vector<std::vector<std::size_t>>& parts) {
    std::vector<Table> tables;
    for (const auto& part : parts) {
        Table cut;
        cut.row_headers = table.row_headers;
        cut.drawings = table.drawings;
        for (const std::size_t column : part)
            cut.columns.push_back(table.columns[column]);
        for (const Row& row : table.rows) {
            Row& copy = cut.rows.emplace_back(std::vector<Cell>{}, row.kind);
            if (row.kind == RowKind::group) {
                copy.cells = row.cells;
                continue;
            }
            for (const std::size_t column : part) {
                copy.cells.push_back(column < row.cells.size() ? row.cells[column] : Cell());
            }
            if (!tables.empty() && table.row_headers) copy.cells[0].drawing = -1; // shown once is enough
            const bool says_nothing =
                std::all_of(copy.cells.begin() + (table.row_headers ? 1 : 0), copy.cells.end(),
                            [](const Cell& cell) { return cell.text.empty() && cell.mark == Mark::none; });
            if (row.kind == RowKind::total && says_nothing) cut.rows.pop_back(); // a sum of other columns
        }
        tables.push_back(std::move(cut));
    }
    return tables;
}

std::vector<std::vector<std::size_t>> fit_columns(const std::vector<int>& widths, int gap, int available,
                                                  bool repeat_first) {
    std::vector<std::vector<std::size_t>> parts;
    const std::size_t first = repeat_first ? 1 : 0;
    int used = available + 1;
    for (std::size_t column = first; column < widths.size(); ++column) {
        if (used + gap + widths[column] > available) {
            parts.emplace_back();
            used = -gap;
            if (repeat_first) {
                parts.back().push_back(0);
                used = widths[0];
            }
        }
        parts.back().push_back(column);
        used += gap + widths[column];
    }
    if (parts.empty() && repeat_first && !widths.empty()) parts.push_back({0});
    return parts;
}

} // namespace routeweigh::writing
