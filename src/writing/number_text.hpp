// SPDX-License-Identifier: MIT
// Numbers as charts print them: short for the eye, exact for machines, the same under every locale.
#pragma once

#include <optional>
#include <string>

namespace routeweigh::writing {

/// Three significant digits with a true minus, without an exponent between 0.0001 and a million.
std::string short_number(double value);

/// The shortest text that reads back as the same double; empty for what is not finite.
std::string exact_number(double value);

/// What can be drawn as a length: the value, or 0 when it is negative or not finite.
double drawable(double value);

/// The value when it is there and finite.
std::optional<double> finite(const std::optional<double>& value);

} // namespace routeweigh::writing
