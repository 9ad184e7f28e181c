// SPDX-License-Identifier: MIT
#include "compare/uncertainty/band_flips.hpp"

#include <algorithm>

namespace routeweigh {

std::vector<BandFlip> band_flips(const Comparison& comparison) {
    const AssessmentRules& rules = comparison.baseline().rules();
    const Banding& banding = rules.first_banding();
    std::vector<BandFlip> result;
    for (std::size_t r = 0; r < banding.rows.size(); ++r) {
        if (!banding.rows[r].alternative) continue;
        Banding flipped = banding;
        flipped.rows[r].band = *banding.rows[r].alternative;
        BandFlip flip{&banding.rows[r], flipped.rows[r].band, {}, {}};
        for (const auto& route : comparison.routes()) {
            const HazardMap map(route->flat(), rules.hazard.score, flipped);
            flip.scores.push_back(score(rules.hazard.score, map.evaluate(route->evaluation())).value);
        }
        for (std::size_t i = 0; i < flip.scores.size(); ++i)
            for (std::size_t j = i + 1; j < flip.scores.size(); ++j) {
                const double before =
                    comparison.route(i).scores().nominal.value - comparison.route(j).scores().nominal.value;
                if (before * (flip.scores[i] - flip.scores[j]) < 0.0) flip.turned.emplace_back(i, j);
            }
        result.push_back(std::move(flip));
    }
    return result;
}

} // namespace routeweigh
