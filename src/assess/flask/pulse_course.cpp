// SPDX-License-Identifier: MIT
#include "assess/flask/pulse_course.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

/// (1 - exp(-x)) / x, 1 at 0. \param x  not below 0
double mean_of_decay(double x) {
    return x == 0 ? 1 : -std::expm1(-x) / x;
}

/// B from 1 mol of A after `age` seconds. Written with the smaller constant before the bracket, so that
/// nothing overflows and equal constants are no exception.
double from_pulse(double made, double used, double age) {
    if (std::isinf(made)) return std::exp(-used * age);
    const double slow = std::min(made, used), fast = std::max(made, used);
    return made * std::exp(-slow * age) * age * mean_of_decay((fast - slow) * age);
}

/// Integral of exp(-k age) over the ages of what went in between.
double integral_of_decay(double k, double youngest, double oldest) {
    const double width = oldest - youngest;
    return std::exp(-k * youngest) * width * mean_of_decay(k * width);
}

/// Integral of from_pulse() over the ages.
double integral_of_pulse(double made, double used, double youngest, double oldest) {
    if (std::isinf(made)) return integral_of_decay(used, youngest, oldest);
    // Close constants are spread around their mean: the divided difference changes by the square of the
    // spread only, and does not drown in rounding.
    constexpr double spread = 1e-4;
    double one = made, other = used;
    if (std::abs(made - used) < spread * std::max(made, used)) {
        const double mean = (made + used) / 2;
        one = mean * (1 + spread / 2);
        other = mean * (1 - spread / 2);
    }
    return made * (integral_of_decay(other, youngest, oldest) - integral_of_decay(one, youngest, oldest)) /
           (one - other);
}

} // namespace

double present(const std::vector<FedPortion>& portions, double made, double t) {
    double sum = 0;
    for (const FedPortion& portion : portions) {
        if (t < portion.from) continue;
        const double oldest = t - portion.from;
        const double duration = portion.until - portion.from;
        if (duration <= 0)
            sum += portion.amount * from_pulse(made, portion.used, oldest);
        else
            sum += portion.amount / duration *
                   integral_of_pulse(made, portion.used, std::max(0.0, t - portion.until), oldest);
    }
    return sum;
}

} // namespace routeweigh
