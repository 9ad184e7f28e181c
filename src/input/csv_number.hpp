// SPDX-License-Identifier: MIT
// Numbers in the cells of a table, with a decimal point or a decimal comma, but one of them through the file.
//
// What a spreadsheet made of a number (a date, "#DIV/0!") is refused and named; nothing is guessed.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

namespace routeweigh {

/// What is wrong with a cell, in words that start with what was read.
class CellError : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

struct CellNumber {
    double value = 0;
    int decimals = 0; ///< digits behind the decimal sign as written, an exponent put in
};

class CsvNumbers {
  public:
    /// \param separator  of the file; where it is a comma, no number holds one
    explicit CsvNumbers(char separator) : separator_(separator) {}

    /// Empty for a cell without a number: "", "-", "n/a".
    /// \throws CellError
    std::optional<CellNumber> read(std::string_view cell);

  private:
    std::optional<CellNumber> read_plain(std::string_view cell);

    char separator_;
    char decimal_sign_ = 0; ///< of the first number that had one
};

/// Does a spreadsheet's date stand here: "2.May", "1/2/2026", "2026-05-02", "05-Dec"? Not "165.5-167", whose
/// numbers are no day, month and year.
bool looks_like_date(std::string_view text);

} // namespace routeweigh
