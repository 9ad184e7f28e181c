// SPDX-License-Identifier: MIT
#include "assess/results/result_row.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace routeweigh::results {
namespace {

constexpr std::size_t most_faults = 50;
constexpr std::size_t longest_code = 16, longest_section = 32;

/// degC. No product of a teaching laboratory is melted in a capillary above (common practice, no source); two
/// temperatures that lost the dash between them are.
constexpr double hottest_melting = 1000, absolute_zero = -273.15;

/// A code has a digit and no space, which most names have not.
bool is_bench_code(std::string_view text) {
    bool digit = false;
    for (const char c : text) {
        const bool number = c >= '0' && c <= '9';
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (!number && !letter && c != '-' && c != '_' && c != '.') return false;
        digit = digit || number;
    }
    return digit && text.size() <= longest_code;
}

/// A range is copied with its unit: "166-168 degC"; only degrees Celsius, as in the heading.
std::string_view without_degrees(std::string_view text) {
    text = trim(text);
    // Degree sign, ordinal sign typed for it, and the one character for both.
    for (const std::string_view unit : {"\xC2\xB0"
                                        "C",
                                        "\xC2\xB0 C",
                                        "\xC2\xBA"
                                        "C",
                                        "\xE2\x84\x83", "degC", "deg C", "C", "\xC2\xB0"})
        if (text.size() > unit.size() && text.substr(text.size() - unit.size()) == unit)
            return trim(text.substr(0, text.size() - unit.size()));
    return text;
}

} // namespace

double last_digit(const std::optional<CellNumber>& number) {
    static constexpr std::array<double, 10> steps{1, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9};
    return number ? steps[static_cast<std::size_t>(std::clamp(number->decimals, 0, 9))] : 0;
}

std::optional<double> ResultRow::mass() const {
    if (product) return product->value;
    if (!boat_and_product || !boat) return std::nullopt;
    // To the digits that were written, so that equal differences are equal numbers.
    const double scale = std::round(1 / std::min(last_digit(boat_and_product), last_digit(boat)));
    return std::round((boat_and_product->value - boat->value) * scale) / scale;
}

double ResultRow::reading() const {
    // One balance weighed both; a spreadsheet that prints 0.000 as 0 made it no coarser.
    return product ? last_digit(product) : 2.0 * std::min(last_digit(boat_and_product), last_digit(boat));
}

RowReader::RowReader(CsvReader& rows, Problems& problems) : rows_(rows), problems_(problems), numbers_(',') {
    if (!rows.next()) throw InputError(rows.problem("the file is empty"));
    columns_ = read_headings(rows, problems);
    numbers_ = CsvNumbers(rows.separator());
}

bool RowReader::has(ColumnKind kind) const {
    return std::any_of(columns_.begin(), columns_.end(),
                       [kind](const Column& column) { return column.kind == kind; });
}

bool RowReader::next(ResultRow& row) {
    while (rows_.next()) {
        if (read(row)) return true;
        if (faults_ >= most_faults) {
            problems_.add(rows_.problem(
                fmt::format("{} faults were found; the rest of the file was not read", faults_)));
            return false;
        }
    }
    return false;
}

bool RowReader::read(ResultRow& row) {
    row = {};
    row.line = rows_.line();
    const std::size_t before = faults_;
    if (rows_.fields().size() > columns_.size()) {
        problems_.add(rows_.problem(fmt::format("the row has {} fields, the headings are {}",
                                                rows_.fields().size(), columns_.size())));
        ++faults_;
        return false;
    }
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        const Column& column = columns_[i];
        if (column.kind == ColumnKind::ignored) continue;
        try {
            read_cell(column, rows_.field(i), row);
        } catch (const CellError& error) {
            problems_.add(rows_.problem(error.what(), column.heading));
            ++faults_;
        }
    }
    return faults_ == before;
}

std::optional<CellNumber> RowReader::number(const Column& column, std::string_view cell) {
    auto read = numbers_.read(cell);
    if (!read) return read;
    read->value *= column.factor;
    read->decimals += column.more_decimals;
    return read;
}

std::optional<CellNumber> RowReader::melting(const Column& column, std::string_view cell) {
    const auto read = number(column, cell);
    if (read && read->value > hottest_melting)
        throw CellError(fmt::format("\"{}\" is no melting temperature in degC; did two numbers run together? "
                                    "Write a range as \"166-168\"",
                                    cell.substr(0, 40)));
    if (read && read->value < absolute_zero)
        throw CellError(fmt::format("\"{}\" is below absolute zero", cell.substr(0, 40)));
    return read;
}

void RowReader::read_range(const Column& column, std::string_view cell, ResultRow& row) {
    if (looks_like_date(cell)) numbers_.read(cell); // says so
    static constexpr std::array<std::string_view, 3> dashes{"\xE2\x80\x93", "-", " to "};
    for (const std::string_view dash : dashes) {
        const std::size_t place = cell.find(dash, 1);
        if (cell.size() < 2 || place == std::string_view::npos) continue;
        row.melts_from = melting(column, without_degrees(cell.substr(0, place)));
        row.melts_to = melting(column, without_degrees(cell.substr(place + dash.size())));
        return;
    }
    row.melts_to = melting(column, without_degrees(cell));
}

void RowReader::read_cell(const Column& column, std::string_view cell, ResultRow& row) {
    switch (column.kind) {
    case ColumnKind::bench:
        // What stands there may be a name, and then it is not repeated.
        if (!is_bench_code(cell))
            throw CellError(cell.empty()
                                ? std::string("the bench code is missing")
                                : fmt::format("no bench code: at most {} letters, digits, \"-\", \".\" "
                                              "or \"_\", one of them a digit; names do not belong here",
                                              longest_code));
        if (looks_like_date(cell))
            throw CellError(
                fmt::format("\"{}\" is a date that a spreadsheet made of a bench code; format the "
                            "column as text and type the code again",
                            cell));
        row.bench = cell;
        return;
    case ColumnKind::section:
        if (cell.size() > longest_section || cell.find('@') != std::string_view::npos)
            throw CellError(fmt::format("no section: at most {} bytes, and no addresses", longest_section));
        row.section = cell;
        return;
    case ColumnKind::product:
        row.product = number(column, cell);
        return;
    case ColumnKind::boat_and_product:
        row.boat_and_product = number(column, cell);
        return;
    case ColumnKind::boat:
        row.boat = number(column, cell);
        return;
    case ColumnKind::dried_once:
        row.dried_once = number(column, cell);
        return;
    case ColumnKind::dried_again:
        row.dried_again = number(column, cell);
        return;
    case ColumnKind::substrate:
        row.substrate = number(column, cell);
        return;
    case ColumnKind::melts_from:
        row.melts_from = melting(column, cell);
        return;
    case ColumnKind::melts_to:
        row.melts_to = melting(column, cell);
        return;
    case ColumnKind::melting_range:
        read_range(column, cell, row);
        return;
    case ColumnKind::own_amount:
        row.own_amount = number(column, cell);
        return;
    case ColumnKind::own_theory:
        row.own_theory = number(column, cell);
        return;
    case ColumnKind::own_yield:
        row.own_yield = number(column, cell);
        return;
    case ColumnKind::ignored:
        return;
    }
}

} // namespace routeweigh::results
