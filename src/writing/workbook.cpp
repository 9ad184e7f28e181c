// SPDX-License-Identifier: MIT
#include "writing/workbook.hpp"

#include <fmt/format.h>

namespace routeweigh::writing {
namespace {

std::string column_letters(int column) {
    std::string letters;
    for (int rest = column + 1; rest > 0; rest = (rest - 1) / 26)
        letters.insert(letters.begin(), static_cast<char>('A' + (rest - 1) % 26));
    return letters;
}

std::string quoted(const std::string& sheet) {
    std::string name = "'";
    for (const char letter : sheet)
        name.append(letter == '\'' ? 2 : 1, letter);
    return name + "'!";
}

} // namespace

std::string cell_name(int column, int row) {
    return fmt::format("{}{}", column_letters(column), row);
}

std::string cell_name(const Sheet& sheet, int column, int row) {
    return fmt::format("{}${}${}", quoted(sheet.name), column_letters(column), row);
}

std::string column_range(const Sheet& sheet, int column, int first_row, int last_row) {
    const std::string letters = column_letters(column);
    return fmt::format("{}${}${}:${}${}", quoted(sheet.name), letters, first_row, letters, last_row);
}

} // namespace routeweigh::writing
