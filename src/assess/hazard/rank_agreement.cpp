// SPDX-License-Identifier: MIT
#include "assess/hazard/rank_agreement.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace routeweigh {
namespace {

/// Pairs of equal neighbours and of all that lie between them, in sorted values.
template<class Value>
double tied_pairs(std::span<const Value> sorted) {
    double pairs = 0.0, alike = 0.0;
    for (std::size_t i = 1; i < sorted.size(); ++i) {
        alike = sorted[i] == sorted[i - 1] ? alike + 1.0 : 0.0;
        pairs += alike;
    }
    return pairs;
}

/// Pairs of which the earlier is the greater. Sorts the values, merging.
double inversions(std::span<double> values) {
    if (values.size() < 2) return 0.0;
    const std::span<double> left = values.first(values.size() / 2), right = values.subspan(left.size());
    double result = inversions(left) + inversions(right);
    for (std::size_t l = 0, r = 0; l < left.size(); ++l) {
        while (r < right.size() && right[r] < left[l])
            ++r;
        result += static_cast<double>(r);
    }
    std::inplace_merge(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(left.size()),
                       values.end());
    return result;
}

} // namespace

std::optional<double> kendall_tau_b(std::span<const double> first, std::span<const double> second) {
    std::vector<std::pair<double, double>> both(first.size());
    for (std::size_t i = 0; i < both.size(); ++i)
        both[i] = {first[i], second[i]};
    std::sort(both.begin(), both.end());
    std::vector<double> x, y;
    for (const auto& [a, b] : both) {
        x.push_back(a);
        y.push_back(b);
    }
    const double count = static_cast<double>(both.size()), pairs = count * (count - 1.0) / 2.0;
    const double discordant = inversions(y); // sorts y
    const double untied_first = pairs - tied_pairs<double>(x), untied_second = pairs - tied_pairs<double>(y);
    if (untied_first == 0.0 || untied_second == 0.0) return std::nullopt;
    const double untied = untied_first + untied_second - pairs + tied_pairs<std::pair<double, double>>(both);
    return (untied - 2.0 * discordant) / std::sqrt(untied_first * untied_second);
}

} // namespace routeweigh
