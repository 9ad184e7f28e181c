// SPDX-License-Identifier: MIT
#include "base/day.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;

TEST_CASE("days are those of the calendar") {
    CHECK(*read_day("2026-09-16") - *read_day("2026-09-14") == 2);
    CHECK(*read_day("2024-03-01") - *read_day("2024-02-28") == 2);         // a leap year
    CHECK(text_with_weekday(*read_day("2026-09-14")) == "Mon 2026-09-14"); // by the calendar of 2026
    for (const char* wrong : {"2026-02-29", "2026-13-01", "14.09.2026", "2026-9-14", "", "2026-09-14x"})
        CHECK_FALSE(read_day(wrong).has_value());
}
