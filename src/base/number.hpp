// SPDX-License-Identifier: MIT
// Decimal numbers read from text the same way in every locale.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace routeweigh {

struct ReadNumber {
    double value = 0;
    int significant = 0;    // digits as written, leading zeros not counted: "0.050" has 2, "100" has 3
    int decimals = 0;       // digits behind the point with the exponent put in: "2.5e-3" has 4, "2.5e3" none
    std::size_t length = 0; // characters used, from the start of the text
};

// The decimal number at the start of the text: optional sign, digits with an optional point, optional
// exponent
// ("2.5e-3"). Empty where there is none; a value too large for a double is infinite. "nan" and "inf" are no
// numbers.
std::optional<ReadNumber> read_number(std::string_view text);

} // namespace routeweigh
