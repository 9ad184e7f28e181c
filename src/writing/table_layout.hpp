// SPDX-License-Identifier: MIT
// What all writers of tables share: lettered notes, the wording of marks, decimals, and cutting a wide table.
#pragma once

#include "writing/blocks.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::writing {

/// The notes of a table's columns and cells in reading order; equal notes share one letter.
class TableNotes {
  public:
    explicit TableNotes(const Table& table);

    const std::vector<std::string>& notes() const { return notes_; }
    std::string letter(const std::string& note) const; ///< "a" ... "z", "aa" ...; empty for an empty note
    static std::string letter_at(std::size_t index);

  private:
    std::vector<std::string> notes_;
};

/// The text of a cell with the sign of a lower bound, or a dash for a missing value.
std::string cell_words(const Cell& cell, std::string_view at_least_sign, std::string_view missing_sign);

/// Places after the decimal point: 1 for "53.4", 0 for "12", and for what is no plain number.
int decimals_after(std::string_view text);

bool has_baseline(const Table& table);

/// Cuts a table into tables of the given columns, each repeating the row header without its drawing; group
/// rows go along.
std::vector<Table> split_columns(const Table& table, const std::vector<std::vector<std::size_t>>& parts);

/// Shares columns out to parts so that no part is wider than `available`; the row header is in every part.
std::vector<std::vector<std::size_t>> fit_columns(const std::vector<int>& widths, int gap, int available,
                                                  bool repeat_first);

} // namespace routeweigh::writing
