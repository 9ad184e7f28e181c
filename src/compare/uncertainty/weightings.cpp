// SPDX-License-Identifier: MIT
#include "compare/uncertainty/weightings.hpp"

#include "base/random.hpp"
#include "route/linear_programme.hpp"

#include <boost/random/exponential_distribution.hpp>

#include <algorithm>

namespace routeweigh {

double share_of_weightings_below(std::span<const double> differences) {
    std::vector<double> above, below;
    for (const double d : differences)
        (d < 0.0 ? below : above).push_back(d);
    if (std::all_of(differences.begin(), differences.end(), [](double d) { return d == 0.0; })) return 0.5;
    if (above.empty()) return 1.0;
    std::vector<double> part(above.size() + 1, 0.0);
    part.front() = 1.0;
    for (const double d : below)
        for (std::size_t k = 1; k < part.size(); ++k)
            part[k] = (above[k - 1] * part[k] - d * part[k - 1]) / (above[k - 1] - d);
    return below.empty() ? 0.0 : part.back();
}

double best_lead(const std::vector<std::vector<double>>& decades, std::size_t route) {
    // Columns: the weights and the lead. Rows: the lead over each rival; the sum of the weights.
    const std::size_t cells = decades[route].size();
    LinearProgramme programme(static_cast<int>(decades.size()), static_cast<int>(cells + 1));
    std::vector<double> bounds(decades.size(), 0.0);
    int row = 0;
    for (std::size_t other = 0; other < decades.size(); ++other) {
        if (other == route) continue;
        for (std::size_t c = 0; c < cells; ++c)
            programme.at(row, static_cast<int>(c)) = decades[route][c] - decades[other][c];
        programme.at(row++, static_cast<int>(cells)) = 1.0;
    }
    for (std::size_t c = 0; c < cells; ++c)
        programme.at(row, static_cast<int>(c)) = 1.0;
    bounds.back() = 1.0;
    programme.objectives.emplace_back(cells + 1, 0.0);
    programme.objectives.front().back() = 1.0;
    return maximise(programme, bounds).x.back();
}

std::vector<double> shares_of_weightings_first(const std::vector<std::vector<double>>& decades,
                                               std::size_t draws, std::uint64_t seed) {
    std::vector<double> shares(decades.size(), 0.0);
    const std::size_t cells = decades.front().size();
    std::vector<double> weights(cells);
    PhiloxStream stream(seed, 0, 0);
    // Independent exponential numbers are in proportion a uniform point of the simplex.
    boost::random::exponential_distribution<double> exponential;
    for (std::size_t d = 0; d < draws; ++d) {
        for (double& weight : weights)
            weight = exponential(stream);
        std::size_t first = 0;
        double least = 0.0;
        for (std::size_t r = 0; r < decades.size(); ++r) {
            double score = 0.0;
            for (std::size_t c = 0; c < cells; ++c)
                score += weights[c] * decades[r][c];
            if (r == 0 || score < least) {
                least = score;
                first = r;
            }
        }
        shares[first] += 1.0 / static_cast<double>(draws);
    }
    return shares;
}

} // namespace routeweigh
