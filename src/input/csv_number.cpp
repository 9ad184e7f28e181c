// SPDX-License-Identifier: MIT
#include "input/csv_number.hpp"

#include "base/number.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

namespace routeweigh {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

constexpr std::array<double, 16> powers{1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                        1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

/// Months in English and German, whole or cut to three letters or more, as spreadsheets write them; "marble"
/// is none.
bool names_month(std::string_view word) {
    static constexpr std::array<std::string_view, 20> months{
        "january",     "february",  "march",   "april",    "may",      "june",    "july",
        "august",      "september", "october", "november", "december", "januar",  "februar",
        "m\xC3\xA4rz", "mai",       "juni",    "juli",     "oktober",  "dezember"};
    const std::string folded = fold(word);
    return folded.size() >= 3 && std::any_of(months.begin(), months.end(), [&](std::string_view month) {
               return month.rfind(folded, 0) == 0;
           });
}

bool is_within(std::string_view digits, int from, int to) {
    int value = 0;
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return read.ec == std::errc() && value >= from && value <= to;
}

bool is_day(std::string_view digits) {
    return digits.size() <= 2 && is_within(digits, 1, 31);
}

/// In either order, as countries have it.
bool is_day_and_month(std::string_view one, std::string_view other) {
    return is_day(one) && is_day(other) && (is_within(one, 1, 12) || is_within(other, 1, 12));
}

bool is_year(std::string_view digits) {
    return digits.size() == 2 || (digits.size() == 4 && is_within(digits, 1900, 2999));
}

[[noreturn]] void refuse(std::string_view cell) {
    const std::string shown(cell.substr(0, 40));
    if (!cell.empty() && cell[0] == '#')
        throw CellError(fmt::format("\"{}\" is an error of the spreadsheet, no number", shown));
    if (looks_like_date(cell))
        throw CellError(fmt::format(
            "\"{}\" is a date that a spreadsheet made of a number; format the column as text and type the "
            "number again",
            shown));
    const auto unit = std::find_if(cell.begin(), cell.end(), [](char c) { return is_letter(c) || c == '%'; });
    if (unit != cell.begin() && unit != cell.end())
        throw CellError(fmt::format("\"{}\" is no plain number; the unit stands in the heading", shown));
    throw CellError(fmt::format("\"{}\" is no number", shown));
}

} // namespace

bool looks_like_date(std::string_view text) {
    std::vector<std::string_view> numbers;
    std::string signs;
    int months = 0;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t start = i;
        if (is_digit(text[i])) {
            while (i < text.size() && is_digit(text[i]))
                ++i;
            numbers.push_back(text.substr(start, i - start));
        } else if (is_letter(text[i])) {
            while (i < text.size() && is_letter(text[i]))
                ++i;
            if (!names_month(text.substr(start, i - start))) return false;
            ++months;
        } else {
            const char c = text[i++];
            if (c == ' ') continue;
            if (c != '.' && c != '/' && c != '-') return false;
            signs += c;
        }
    }
    if (months == 1) {
        if (numbers.size() == 1) return is_day(numbers[0]) || is_year(numbers[0]);
        return numbers.size() == 2 && is_day(numbers[0]) && is_year(numbers[1]);
    }
    // "165.5-167" is a melting range: a date has one sign all through, and a day, a month and a year.
    if (months != 0 || signs.empty() || signs.find_first_not_of(signs[0]) != std::string::npos) return false;
    if (numbers.size() == 2) return signs == "/" && is_day_and_month(numbers[0], numbers[1]);
    if (numbers.size() != 3) return false;
    if (numbers[0].size() == 4) return is_year(numbers[0]) && is_day_and_month(numbers[1], numbers[2]);
    return is_year(numbers[2]) && is_day_and_month(numbers[0], numbers[1]);
}

std::optional<CellNumber> CsvNumbers::read(std::string_view cell) {
    if (cell.empty() || cell == "-" || cell == "n/a" || cell == "N/A" || cell == "\xE2\x80\x93")
        return std::nullopt;
    if (const auto plain = read_plain(cell)) return plain;
    // Rare: an exponent, or more digits than are exact.
    if (decimal_sign_ != ',') {
        const auto number = read_number(cell);
        if (number && number->length == cell.size()) {
            if (!std::isfinite(number->value))
                throw CellError(fmt::format("\"{}\" is too large for a number", cell.substr(0, 40)));
            return CellNumber{number->value, number->decimals};
        }
    }
    refuse(cell);
}

std::optional<CellNumber> CsvNumbers::read_plain(std::string_view cell) {
    std::size_t i = 0;
    const bool negative = cell[0] == '-';
    if (cell[0] == '-' || cell[0] == '+') ++i;
    std::int64_t digits = 0;
    if (cell.size() > 17) return std::nullopt; // more than 15 digits and their signs
    int count = 0;
    std::size_t behind_sign = 0;
    char sign = 0;
    for (; i < cell.size(); ++i) {
        const char c = cell[i];
        if (is_digit(c)) {
            digits = 10 * digits + (c - '0');
            ++count;
        } else if ((c == '.' || c == ',') && sign == 0) {
            sign = c;
            behind_sign = i + 1;
        } else if (c == '.' || c == ',') {
            if (looks_like_date(cell)) return std::nullopt;
            throw CellError(fmt::format("\"{}\" has two decimal signs; write no signs between thousands",
                                        cell.substr(0, 40)));
        } else {
            return std::nullopt;
        }
    }
    if (count == 0 || count > 15) return std::nullopt;
    const int decimals = sign != 0 ? static_cast<int>(cell.size() - behind_sign) : 0;
    if (sign == ',' && separator_ == ',')
        throw CellError(fmt::format("\"{}\" has a comma, and commas separate the columns here; write a "
                                    "decimal point, or separate by semicolons",
                                    cell));
    if (sign != 0 && decimal_sign_ == 0) decimal_sign_ = sign;
    if (sign != 0 && sign != decimal_sign_)
        throw CellError(fmt::format("\"{}\" has a decimal {}, the numbers before it a {}", cell,
                                    sign == ',' ? "comma" : "point",
                                    decimal_sign_ == ',' ? "comma" : "point"));
    const double value = static_cast<double>(digits) / powers[static_cast<std::size_t>(decimals)];
    return CellNumber{negative ? -value : value, decimals};
}

} // namespace routeweigh
