// SPDX-License-Identifier: MIT
#include "compare/comparison.hpp"

#include "assess/hazard/rank_agreement.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace routeweigh {
namespace {

SameAuxiliaries same_auxiliaries(const Assessment& route, const Assessment& baseline) {
    const Auxiliaries ours = auxiliaries_of(route.values(), route.flat()),
                      theirs = auxiliaries_of(baseline.values(), baseline.flat());
    return {intensity_with_same_auxiliaries(ours, theirs),
            route.totals().drown_out == 0.0 && replaced_auxiliaries(ours, theirs) > 0.0};
}

int sign(double difference, double scale) {
    if (std::abs(difference) <= 1e-9 * scale) return 0;
    return difference < 0.0 ? -1 : 1;
}

/// Some yields within reach of those assumed, each of its own route, give both the same intensity.
bool yields_may_turn(const Assessment& route, double intensity, const Assessment& other,
                     double other_intensity) {
    const auto ends = [](const Assessment& one, double value) {
        if (!one.yield_assumed()) return std::pair(value, value);
        const double yield = one.totals().yield;
        const auto [least, most] = plausible_yields(yield);
        return std::pair(value * yield / most, value * yield / least);
    };
    const auto [low, high] = ends(route, intensity);
    const auto [other_low, other_high] = ends(other, other_intensity);
    return low <= other_high && other_low <= high;
}

MassVerdict verdict(const Assessment& route, const Assessment& baseline, const SameAuxiliaries& same,
                    const SameAuxiliaries& baseline_same) {
    const double base = baseline_same.process_mass_intensity;
    const double ours = route.metric("process_mass_intensity"),
                 theirs = baseline.metric("process_mass_intensity");
    const int written = sign(ours - theirs, base);
    const int equal_aids = sign(same.process_mass_intensity - base, base);
    if (written == 0 && equal_aids == 0) return MassVerdict::equal;
    if (written != equal_aids) return MassVerdict::depends;
    if ((route.yield_assumed() || baseline.yield_assumed()) &&
        (yields_may_turn(route, ours, baseline, theirs) ||
         yields_may_turn(route, same.process_mass_intensity, baseline, base)))
        return MassVerdict::within_yield;
    return written < 0 ? MassVerdict::lower : MassVerdict::higher;
}

} // namespace

std::pair<double, double> plausible_yields(double yield) {
    return {std::max(0.05, yield - plausible_yield_difference),
            std::min(1.0, yield + plausible_yield_difference)};
}

Comparison::Comparison(std::vector<std::unique_ptr<Assessment>> routes, std::size_t baseline)
    : routes_(std::move(routes)), baseline_(baseline) {
    const Assessment& base = *routes_[baseline_];
    const SameAuxiliaries base_same = same_auxiliaries(base, base);
    const double base_written = base.metric("process_mass_intensity");
    for (std::size_t i = 0; i < routes_.size(); ++i) {
        const Assessment& route = *routes_[i];
        RouteComparison& result = compared_.emplace_back();
        result.same_auxiliaries = same_auxiliaries(route, base);
        if (i == baseline_) continue;
        result.hazard = compare_hazards({route.compiled().hazard_map(), route.values().hazard},
                                        {base.compiled().hazard_map(), base.values().hazard});
        const double yield = route.totals().yield;
        if (std::isnan(yield) || std::isnan(base.totals().yield))
            continue; // steps in a loop: no overall yield to vary
        result.break_even = BreakEven{yield * route.metric("process_mass_intensity") / base_written,
                                      yield * result.same_auxiliaries.process_mass_intensity /
                                          base_same.process_mass_intensity};
        result.mass = verdict(route, base, result.same_auxiliaries, base_same);
    }
    if (routes_.size() > 3 && base.second_hazard_map() != nullptr) {
        std::vector<double> first, second;
        for (const auto& route : routes_) {
            first.push_back(route->scores().nominal.value);
            second.push_back(route->scores().second_banding->value);
        }
        banding_agreement_ = kendall_tau_b(first, second);
    }
}

} // namespace routeweigh
