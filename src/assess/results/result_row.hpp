// SPDX-License-Identifier: MIT
// One line of a class: what stands at one bench, with masses in g, read from a CSV file of any length.
//
// Columns are known by their headings, which carry the unit: "product (g)", "boat and product [mg]",
// "melting range", "theoretical yield (g)". A column that looks as if it named people is refused.
#pragma once

#include "input/csv_number.hpp"
#include "input/csv_reader.hpp"
#include "input/field.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::results {

/// A step of the last digit written: 0.01 for "1.25"; 0 where there is no number.
double last_digit(const std::optional<CellNumber>& number);

struct ResultRow {
    std::size_t line = 0;
    std::string_view bench, section;                             ///< good until the next row is read
    std::optional<CellNumber> product, boat_and_product, boat;   ///< g
    std::optional<CellNumber> dried_once, dried_again;           ///< g of product, without the boat
    std::optional<CellNumber> substrate;                         ///< g of the reference material weighed
    std::optional<CellNumber> melts_from, melts_to;              ///< degC
    std::optional<CellNumber> own_amount, own_theory, own_yield; ///< mmol, g, %: the student's own

    /// As far as it is known: the mass stated, else the difference.
    std::optional<double> mass() const;
    /// Of mass(), by the last digit written, g; 0 where it is not known.
    double reading() const;
};

enum class ColumnKind {
    bench,
    section,
    product,
    boat_and_product,
    boat,
    dried_once,
    dried_again,
    substrate,
    melts_from,
    melts_to,
    melting_range,
    own_amount,
    own_theory,
    own_yield,
    ignored
};

struct Column {
    ColumnKind kind = ColumnKind::ignored;
    std::string heading;
    double factor = 1;     ///< to g, mmol, degC or per cent
    int more_decimals = 0; ///< that the factor adds: 3 from mg to g
};

/// The columns of the heading row. \param problems  receives a warning for a column that is not read
/// \throws InputError a column of names, an unknown column spelt nearly like a known one, a unit that is
/// missing or of another kind, no bench code, no mass
std::vector<Column> read_headings(const CsvReader& rows, Problems& problems);

class RowReader {
  public:
    /// Reads the headings. \throws InputError as read_headings(), and for a file without any row
    RowReader(CsvReader& rows, Problems& problems);

    /// The next row without a fault; faults are recorded and their rows left out. False at the end, and after
    /// 50 faults.
    bool next(ResultRow& row);

    bool has(ColumnKind kind) const;

  private:
    bool read(ResultRow& row);
    void read_cell(const Column& column, std::string_view cell, ResultRow& row);
    std::optional<CellNumber> number(const Column& column, std::string_view cell);
    /// \throws CellError for what no melting temperature can be
    std::optional<CellNumber> melting(const Column& column, std::string_view cell);
    void read_range(const Column& column, std::string_view cell, ResultRow& row);

    CsvReader& rows_;
    Problems& problems_;
    CsvNumbers numbers_;
    std::vector<Column> columns_;
    std::size_t faults_ = 0;
};

} // namespace routeweigh::results
