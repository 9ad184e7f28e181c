// SPDX-License-Identifier: MIT
#include "compare/break_even_answer.hpp"

#include "compare/charge_place.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace routeweigh {
namespace {

constexpr int window_points = 24;

/// Equivalents are of interest for what reacts, and of the reference they are 1 by definition.
double equivalents_of(const Assessment& assessment, const NumericInput& input) {
    for (const ChargePlace& place : charge_places(assessment)) {
        if (place.charge->pointer + "/amount" != input.pointer || !place.charge->role->reactant) continue;
        const Component* active = place.charge->material->only_active();
        if (active == nullptr || active->substance == place.step->reference) return 0.0;
        return equivalents(place);
    }
    return 0.0;
}

} // namespace

BreakEvenAnswer answer_break_even(const Assessment& assessment, const NumericInput& input,
                                  const FigurePick& figure, double target, const Apply& apply) {
    const auto try_value = [&](double value) {
        return apply({{input.pointer, json_quoted(input.written(value))}});
    };
    const Response response = [&](double value) {
        const Outcome outcome = try_value(value);
        return outcome.trial ? figure.value(outcome.trial->values())
                             : std::numeric_limits<double>::quiet_NaN();
    };
    BreakEvenAnswer answer{input, {}, {}, {}, equivalents_of(assessment, input), {}};
    const std::array written{input.value};
    answer.search = find_break_even(response, target, input.low, input.high, written);
    const BreakEvenSearch& search = answer.search;
    if (search.curve.empty()) return answer;
    const double step = 1e-6 * (input.high - input.low);
    if (search.low_cut) answer.low_reason = try_value(search.low - step).refused;
    if (search.high_cut) answer.high_reason = try_value(search.high + step).refused;

    double low = input.value, high = input.value;
    for (const double root : search.roots) {
        low = std::min(low, root);
        high = std::max(high, root);
    }
    low = std::max(search.low, 0.6 * low);
    high = std::min(search.high, 1.4 * high);
    for (int i = 0; i <= window_points; ++i) {
        const double at = low + (high - low) * i / window_points;
        if (const double value = response(at); std::isfinite(value)) answer.window.push_back({at, value});
    }
    return answer;
}

} // namespace routeweigh
