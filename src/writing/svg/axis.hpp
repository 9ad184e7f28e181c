// SPDX-License-Identifier: MIT
// Round numbers for the ticks of an axis, and the way from values to pixels.
#pragma once

#include <string>
#include <vector>

namespace routeweigh::writing {

struct Axis {
    double from = 0; ///< value at the first pixel
    double to = 1;
    double first_pixel = 0;
    double last_pixel = 1;
    bool logarithmic = false;

    double pixel(double value) const;
};

/// Multiples of 1, 2 or 5 times a power of ten within [from, to], about `wanted` of them.
std::vector<double> linear_ticks(double from, double to, int wanted);

/// A tick as people write it: "20", "0.5".
std::string tick_text(double tick);

/// Powers of ten, with 2 and 5 between them when there are few.
std::vector<double> logarithmic_ticks(double from, double to);

} // namespace routeweigh::writing
