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
template<Number N>
class MeanOfDecades {
  public:
    void weigh_next_with(double weight) {
        if (weight == weight_) return;
        flush();
        weight_ = weight;
    }

    void add(const N& value, const N& low, const N& high, bool& alike) {
        constexpr double infinite = std::numeric_limits<double>::infinity();
        const bool unbounded = agree(high == N(infinite), alike);
        unbounded_ = unbounded_ || unbounded;
        product_[0] *= 1.0 + value;
        product_[1] *= 1.0 + low;
        product_[2] *= 1.0 + (unbounded ? value : high);
        // The high end is the largest of the three; this is long before it could overflow.
        if (agree(product_[2] > N(1e150), alike)) flush();
    }

    HazardScoreOf<N> over(double weights) {
        flush();
        return {sum_[0] / weights, sum_[1] / weights,
                unbounded_ ? N(std::numeric_limits<double>::infinity()) : sum_[2] / weights};
    }

  private:
    void flush() {
        for (std::size_t i = 0; i < product_.size(); ++i) {
            if (weight_ > 0.0) sum_[i] += weight_ * each(product_[i], [](double x) { return std::log10(x); });
            product_[i] = 1.0;
        }
    }

    double weight_ = 0.0;
    bool unbounded_ = false;
    std::array<N, 3> product_{1.0, 1.0, 1.0}, sum_{0.0, 0.0, 0.0};
};

template<Number N>
HazardScoreOf<N> score_of(const HazardScheme& scheme, const HazardValuesOf<N>& values, double x0_factor,
                          bool& alike) {
    MeanOfDecades<N> mean;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e) {
        const EndpointRule& rule = scheme.endpoints[e];
        if (rule.weight == 0.0) continue; // an unbounded figure without weight does not count
        mean.weigh_next_with(rule.weight);
        const double per_x0 = 1.0 / (rule.x0 * x0_factor);
        for (std::size_t p = 0; p < place_count; ++p) {
            if (!scheme.places[p].scored) continue;
            const std::size_t cell = cell_index(e, static_cast<HazardPlace>(p));
            mean.add(values.value[cell] * per_x0, values.low[cell] * per_x0, values.high[cell] * per_x0,
                     alike);
        }
    }
    const double weights = sum_of_weights(scheme);
    return weights > 0.0 ? mean.over(weights) : HazardScoreOf<N>{};
}

} // namespace

double decades(const EndpointRule& rule, double x, double x0_factor) {
    return std::log10(1.0 + x / (rule.x0 * x0_factor));
}

double weight_of(const HazardScheme& scheme, std::size_t endpoint, HazardPlace place) {
    if (!scheme.places[index_of(place)].scored) return 0.0;
    return scheme.endpoints[endpoint].weight / sum_of_weights(scheme);
}

HazardScore score(const HazardScheme& scheme, const HazardValues& values, double x0_factor) {
    bool alike = true;
    return score_of(scheme, values, x0_factor, alike);
}

HazardScoreOf<Lanes> score(const HazardScheme& scheme, const HazardValuesOf<Lanes>& values, bool& alike) {
    return score_of(scheme, values, 1.0, alike);
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
