// SPDX-License-Identifier: MIT
#include "writing/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {

std::string short_number(double value) {
    if (value < 0 && std::isfinite(value)) return "\u2212" + short_number(-value);
    if (value == 0) return "0";
    if (!std::isfinite(value)) return "-";
    // Rounding comes first, so that 9.996 becomes 10.0 and not 10.00.
    std::string scientific = fmt::format("{:.2e}", value);
    const int exponent = std::stoi(scientific.substr(scientific.find('e') + 1));
    if (exponent < -4 || exponent >= 6) return scientific;
    return fmt::format("{:.{}f}", value, std::max(0, 2 - exponent));
}

std::string exact_number(double value) {
    return std::isfinite(value) ? fmt::format("{}", value) : std::string();
}

double drawable(double value) {
    return std::isfinite(value) && value > 0 ? value : 0;
}

std::optional<double> finite(const std::optional<double>& value) {
    return value && std::isfinite(*value) ? value : std::nullopt;
}

} // namespace routeweigh::writing
