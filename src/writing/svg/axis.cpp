// SPDX-License-Identifier: MIT
#include "writing/svg/axis.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::writing {

double Axis::pixel(double value) const {
    const auto scale = [&](double v) { return logarithmic ? std::log10(v) : v; };
    const double span = scale(to) - scale(from);
    const double share = span > 0 ? (scale(value) - scale(from)) / span : 0.5;
    return first_pixel + share * (last_pixel - first_pixel);
}

std::vector<double> linear_ticks(double from, double to, int wanted) {
    if (!(to > from) || wanted < 1) return {from};
    const double raw = (to - from) / wanted;
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    const double lead = raw / power;
    const double step = (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power;
    std::vector<double> ticks;
    const double tolerance = 1e-9 * step;
    for (double count = std::ceil((from - tolerance) / step); count * step <= to + tolerance; ++count) {
        ticks.push_back(count == 0 ? 0.0 : count * step);
        if (ticks.size() > 100) break;
    }
    return ticks;
}

std::string tick_text(double tick) {
    return fmt::format("{:.6g}", tick);
}

std::vector<double> logarithmic_ticks(double from, double to) {
    std::vector<double> ticks;
    const int first = static_cast<int>(std::floor(std::log10(from)));
    const int last = static_cast<int>(std::ceil(std::log10(to)));
    const bool few = to / from <= 1000;
    const int every = std::max(1, (last - first) / 8);
    for (int exponent = first; exponent <= last; exponent += few ? 1 : every) {
        for (const double lead : {1.0, 2.0, 5.0}) {
            if (lead > 1 && !few) continue;
            const double tick = lead * std::pow(10.0, exponent);
            if (tick >= from * (1 - 1e-9) && tick <= to * (1 + 1e-9)) ticks.push_back(tick);
        }
    }
    return ticks;
}

} // namespace routeweigh::writing
