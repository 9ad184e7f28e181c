// SPDX-License-Identifier: MIT
// Days of the calendar as ISO 8601 writes them, "2026-09-14", and how many lie between two.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace routeweigh {

/// Days since 1970-01-01.
struct Day {
    int number = 0;

    friend bool operator==(Day a, Day b) { return a.number == b.number; }
    friend bool operator<(Day a, Day b) { return a.number < b.number; }
    friend int operator-(Day a, Day b) { return a.number - b.number; }
};

/// Empty where it is no day of the calendar, or a year outside 1900 to 2999.
std::optional<Day> read_day(std::string_view text);

/// "2026-09-14".
std::string text_of(Day day);
/// "Mon 2026-09-14".
std::string text_with_weekday(Day day);

} // namespace routeweigh
