// SPDX-License-Identifier: MIT
#include "assess/hazard/rank_agreement.hpp"

#include <cmath>
#include <cstddef>

namespace routeweigh {

std::optional<double> kendall_tau_b(std::span<const double> first, std::span<const double> second) {
    double agreement = 0.0, untied_first = 0.0, untied_second = 0.0;
    const auto sign = [](double a, double b) { return a < b ? -1.0 : a > b ? 1.0 : 0.0; };
    for (std::size_t i = 0; i < first.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            const double x = sign(first[i], first[j]), y = sign(second[i], second[j]);
            agreement += x * y;
            untied_first += x * x;
            untied_second += y * y;
        }
    if (untied_first == 0.0 || untied_second == 0.0) return std::nullopt;
    return agreement / std::sqrt(untied_first * untied_second);
}

} // namespace routeweigh
