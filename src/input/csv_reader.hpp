// SPDX-License-Identifier: MIT
// Rows of a CSV file, read in chunks so that a file of any length needs the same memory.
//
// RFC 4180 with what spreadsheets make of it: comma, semicolon or tab (the one that stands most often in the
// first row), a byte-order mark, CR LF or CR as line ends, rows of nothing but empty fields. A row may have
// at most 64 kB. Whoever calls supplies the bytes: this layer opens no file.
#pragma once

#include "base/problem.hpp"

#include <array>
#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

/// Puts at most `size` bytes into the buffer and returns how many; 0 at the end of the file.
using ReadBytes = std::function<std::size_t(char* buffer, std::size_t size)>;

class CsvReader {
  public:
    /// \param name  of the file, as messages call it
    CsvReader(std::string name, ReadBytes read);

    /// The next row that is not empty; false at the end.
    /// \throws InputError an open quote, text behind a quoted field, a row above 64 kB, UTF-16, JSON, a
    /// spreadsheet
    bool next();

    /// Of the row that next() read, without quotes and without spaces around them; good until the next call.
    std::span<const std::string_view> fields() const { return fields_; }
    /// Field of this column, "" where the row is shorter.
    std::string_view field(std::size_t column) const {
        return column < fields_.size() ? fields_[column] : std::string_view();
    }
    /// Line of the file in which the row starts, from 1.
    std::size_t line() const { return line_; }
    char separator() const { return separator_; }
    const std::string& name() const { return name_; }

    /// A fault of the row that next() read; of one column where one is named.
    Problem problem(std::string message, std::string_view column = {}) const;

  private:
    enum class Row { read, incomplete, none };

    void open();
    bool refill();
    Row read_row();
    /// Reads one field from `at` and moves it behind the field. \return false where the buffer ends before
    bool read_field(std::size_t& at);
    void choose_separator();

    std::string name_;
    ReadBytes read_;
    std::vector<char> buffer_;
    std::size_t begin_ = 0, end_ = 0; ///< what is not used up yet
    bool opened_ = false, file_ended_ = false;
    char separator_ = ',';
    std::array<bool, 256> ends_field_{}; ///< separator and line ends
    std::size_t line_ = 0, next_line_ = 1;
    std::size_t breaks_ = 0; ///< line ends within quotes of the row
    std::vector<std::string_view> fields_;
    std::vector<std::size_t> squeeze_; ///< fields with doubled quotes
};

/// Reads from a text that is at hand.
ReadBytes bytes_of(std::string text);

} // namespace routeweigh
