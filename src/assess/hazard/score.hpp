// SPDX-License-Identifier: MIT
// The hazard score: the mean over endpoints and places of the decades by which a figure exceeds its scale.
//
//   d = log10(1 + x / x0)           x the figure per gram of product, x0 from the scheme, never from the
//   routes
//
// It is a stated summary and no verdict: never for approving work, protective equipment or ventilation, never
// for comparing different products or scales, never for grading.
#pragma once

#include "assess/hazard/hazard_map.hpp"
#include "assess/hazard/scheme.hpp"

#include <cmath>
#include <concepts>
#include <cstddef>
#include <optional>
#include <vector>

namespace routeweigh {

template<Number N>
struct HazardScoreOf {
    N value = 0; // from the values of the cells
    N low = 0;
    N high = 0; // infinite where a cell is unbounded

    // What is unbounded has no rank by score.
    bool ranked() const requires std::same_as<N, double> { return std::isfinite(high); }
};
using HazardScore = HazardScoreOf<double>;

// d of one figure; `x0_factor` makes every x0 that many times larger.
double decades(const EndpointRule& rule, double x, double x0_factor = 1.0);

HazardScore score(const HazardScheme& scheme, const HazardValues& values, double x0_factor = 1.0);
// The same for several draws; `alike` as in agree().
HazardScoreOf<Lanes> score(const HazardScheme& scheme, const HazardValuesOf<Lanes>& values, bool& alike);

// Share of one cell in the score (weight included, summing to 1); 0 for places that are not scored.
double weight_of(const HazardScheme& scheme, std::size_t endpoint, HazardPlace place);

struct ScoreAtScale {
    double x0_factor = 1;
    HazardScore score;
};

// The score and its repetitions: other scales, and other bands for what has no limit.
struct HazardScores {
    HazardScore nominal;
    std::vector<ScoreAtScale> scales;
    std::optional<HazardScore> second_banding;
};

// `second`: the values on the second banding, or nullptr.
HazardScores all_scores(const HazardScheme& scheme, const HazardValues& values, const HazardValues* second);

} // namespace routeweigh
