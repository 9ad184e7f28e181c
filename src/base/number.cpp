// SPDX-License-Identifier: MIT
#include "base/number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>
#include <locale>
#include <sstream>
#include <string>

namespace routeweigh {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// digits * 10^exponent, rounded to the nearest double.
double decimal(const std::string& digits, long exponent) {
    if (digits.empty()) return 0;
    const long magnitude = exponent + static_cast<long>(digits.size());
    if (magnitude > 310) return std::numeric_limits<double>::infinity();
    if (magnitude < -330) return 0;

    // Both factors are exact doubles here, so that one rounding remains.
    constexpr std::array<double, 23> powers = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                               1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                                               1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    if (digits.size() <= 15 && exponent >= -22 && exponent <= 22) {
        std::int64_t whole = 0;
        for (const char digit : digits)
            whole = 10 * whole + (digit - '0');
        const auto value = static_cast<double>(whole);
        return exponent < 0 ? value / powers[static_cast<std::size_t>(-exponent)]
                            : value * powers[static_cast<std::size_t>(exponent)];
    }
    // Rare. A stream with the classic locale rounds correctly and knows no other decimal sign.
    std::istringstream stream(fmt::format("{}e{}", digits, exponent));
    stream.imbue(std::locale::classic());
    double value = 0;
    stream >> value;
    return stream.fail() ? std::numeric_limits<double>::infinity() : value;
}

} // namespace

std::optional<ReadNumber> read_number(std::string_view text) {
    std::size_t i = 0;
    const bool negative = !text.empty() && text[0] == '-';
    if (!text.empty() && (text[0] == '-' || text[0] == '+')) ++i;

    std::string digits; // without leading zeros
    long exponent = 0;
    int zeros = 0; // written before the first other digit
    bool point = false;
    const std::size_t start = i;
    for (; i < text.size() && (is_digit(text[i]) || (text[i] == '.' && !point)); ++i) {
        if (text[i] == '.') {
            point = true;
            continue;
        }
        if (point) --exponent;
        if (text[i] == '0' && digits.empty())
            ++zeros;
        else
            digits += text[i];
    }
    if (i == start || (point && i == start + 1)) return std::nullopt;

    ReadNumber result;
    // Of a written zero, "0.00", the digits behind the point tell how closely it was read.
    result.significant =
        digits.empty() ? std::max(1, zeros - (point ? 1 : 0)) : static_cast<int>(digits.size());

    if (i + 1 < text.size() && (text[i] == 'e' || text[i] == 'E')) {
        std::size_t j = i + 1;
        const bool down = text[j] == '-';
        if (text[j] == '-' || text[j] == '+') ++j;
        if (j < text.size() && is_digit(text[j])) {
            long written = 0;
            for (; j < text.size() && is_digit(text[j]); ++j)
                written = std::min(10 * written + (text[j] - '0'), 100000L);
            exponent += down ? -written : written;
            i = j;
        }
    }
    result.decimals = static_cast<int>(std::max(0L, -exponent));
    // Digits past the 30th change no double that anybody can have meant.
    if (digits.size() > 30) {
        exponent += static_cast<long>(digits.size()) - 30;
        digits.resize(30);
    }
    const double value = decimal(digits, exponent);
    result.value = negative ? -value : value;
    result.length = i;
    return result;
}

} // namespace routeweigh
