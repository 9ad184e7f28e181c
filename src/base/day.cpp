// SPDX-License-Identifier: MIT
#include "base/day.hpp"

#include <fmt/format.h>

#include <array>
#include <chrono>

namespace routeweigh {
namespace {

std::optional<int> digits(std::string_view text) {
    int value = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') return std::nullopt;
        value = 10 * value + (c - '0');
    }
    return value;
}

std::chrono::sys_days sys_days_of(Day day) {
    return std::chrono::sys_days(std::chrono::days(day.number));
}

} // namespace

std::optional<Day> read_day(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = digits(text.substr(0, 4)), month = digits(text.substr(5, 2)),
               day = digits(text.substr(8, 2));
    if (!year || !month || !day || *year < 1900 || *year > 2999) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year),
                                           std::chrono::month(static_cast<unsigned>(*month)),
                                           std::chrono::day(static_cast<unsigned>(*day))};
    if (!date.ok()) return std::nullopt;
    return Day{static_cast<int>(std::chrono::sys_days(date).time_since_epoch().count())};
}

std::string text_of(Day day) {
    const std::chrono::year_month_day date(sys_days_of(day));
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::string text_with_weekday(Day day) {
    static constexpr std::array<const char*, 7> names{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    const std::chrono::weekday weekday(sys_days_of(day));
    return fmt::format("{} {}", names[weekday.c_encoding()], text_of(day));
}

} // namespace routeweigh
