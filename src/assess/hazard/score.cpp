// SPDX-License-Identifier: MIT
#include "assess/hazard/score.hpp"

#include <array>
#include <cmath>
#include <limits>

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

// Cells of equal weight are multiplied and the logarithm is taken of the product: the same sum, and one
// logarithm where the plain way takes one a cell.
class MeanOfDecades {
  public:
    void weigh_next_with(double weight) {
        if (weight == weight_) return;
        flush();
        weight_ = weight;
    }

    void add(double value, double low, double high) {
        if (std::isinf(high)) {
            unbounded_ = true;
            high = value;
        }
        product_[0] *= 1.0 + value;
        product_[1] *= 1.0 + low;
        product_[2] *= 1.0 + high;
        // The high end is the largest of the three; this is long before it could overflow.
        if (product_[2] > 1e150) flush();
    }

    HazardScore over(double weights) {
        flush();
        return {sum_[0] / weights, sum_[1] / weights,
                unbounded_ ? std::numeric_limits<double>::infinity() : sum_[2] / weights};
    }

  private:
    void flush() {
        for (std::size_t i = 0; i < product_.size(); ++i) {
            if (weight_ > 0.0) sum_[i] += weight_ * std::log10(product_[i]);
            product_[i] = 1.0;
        }
    }

    double weight_ = 0.0;
    bool unbounded_ = false;
    std::array<double, 3> product_{1.0, 1.0, 1.0}, sum_{};
};

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
    MeanOfDecades mean;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e) {
        const EndpointRule& rule = scheme.endpoints[e];
        if (rule.weight == 0.0) continue; // an unbounded figure without weight does not count
        mean.weigh_next_with(rule.weight);
        const double per_x0 = 1.0 / (rule.x0 * x0_factor);
        for (std::size_t p = 0; p < place_count; ++p) {
            if (!scheme.places[p].scored) continue;
            const std::size_t cell = cell_index(e, static_cast<HazardPlace>(p));
            mean.add(values.value[cell] * per_x0, values.low[cell] * per_x0, values.high[cell] * per_x0);
        }
    }
    const double weights = sum_of_weights(scheme);
    return weights > 0.0 ? mean.over(weights) : HazardScore{};
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
