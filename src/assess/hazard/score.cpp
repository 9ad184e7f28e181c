// SPDX-License-Identifier: MIT
#include "assess/hazard/score.hpp"

#include <cmath>

namespace routeweigh {
namespace {

double sum_of_weights(const HazardScheme& scheme) {
    double places = 0.0, weights = 0.0;
    for (const PlaceRule& place : scheme.places)
        places += place.scored ? 1.0 : 0.0;
    for (const EndpointRule& rule : scheme.endpoints)
        weights += rule.weight;
    return places * weights;
}

double mean(const HazardScheme& scheme, const std::vector<double>& figures, double x0_factor) {
    double sum = 0.0;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e) {
        const EndpointRule& rule = scheme.endpoints[e];
        if (rule.weight == 0.0) continue; // an unbounded figure without weight does not count
        // The logarithm of the product over the places is the sum of their logarithms, at a third of the
        // cost.
        double product = 1.0;
        for (std::size_t p = 0; p < place_count; ++p)
            if (scheme.places[p].scored)
                product *= 1.0 + figures[cell_index(e, static_cast<HazardPlace>(p))] / (rule.x0 * x0_factor);
        sum += rule.weight * std::log10(product);
    }
    const double weights = sum_of_weights(scheme);
    return weights > 0.0 ? sum / weights : 0.0;
}

} // namespace

bool HazardScore::ranked() const {
    return std::isfinite(high);
}

double decades(const EndpointRule& rule, double x, double x0_factor) {
    return std::log10(1.0 + x / (rule.x0 * x0_factor));
}

double weight_of(const HazardScheme& scheme, std::size_t endpoint, HazardPlace place) {
    if (!scheme.places[index_of(place)].scored) return 0.0;
    return scheme.endpoints[endpoint].weight / sum_of_weights(scheme);
}

HazardScore score(const HazardScheme& scheme, const HazardValues& values, double x0_factor) {
    return {mean(scheme, values.value, x0_factor), mean(scheme, values.low, x0_factor),
            mean(scheme, values.high, x0_factor)};
}

HazardScores all_scores(const HazardScheme& scheme, const HazardValues& values, const HazardValues* second) {
    HazardScores scores;
    scores.nominal = score(scheme, values);
    for (const double factor : scheme.x0_factors)
        scores.scales.push_back({factor, score(scheme, values, factor)});
    if (second != nullptr) scores.second_banding = score(scheme, *second);
    return scores;
}

} // namespace routeweigh
