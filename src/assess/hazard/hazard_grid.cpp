// SPDX-License-Identifier: MIT
#include "assess/hazard/hazard_grid.hpp"

#include "assess/hazard/score.hpp"

#include <algorithm>
#include <cstddef>

namespace routeweigh {
namespace {

// By what a reader asks first: most of the value, then most that is possible, then what is only labelled.
bool comes_first(const HazardContributor& a, const HazardContributor& b) {
    if (a.amount != b.amount) return a.amount > b.amount;
    if (a.high != b.high) return a.high > b.high;
    if (a.short_term != b.short_term) return a.short_term > b.short_term;
    if (a.grams != b.grams) return a.grams > b.grams;
    return a.substance->name < b.substance->name;
}

void add_contributor(HazardCell& cell, const HazardMap& map, const std::vector<std::string>& levels,
                     const HazardEntry& entry, const HazardContribution& per_gram, double grams) {
    HazardContributor contributor;
    contributor.substance = entry.substance;
    contributor.solution = entry.solution;
    contributor.grams = grams;
    contributor.amount = grams * per_gram.low;
    contributor.high = grams * per_gram.high;
    contributor.short_term = grams * per_gram.short_term;
    contributor.share = cell.value > 0.0 ? contributor.amount / cell.value : 0.0;
    contributor.basis = per_gram.basis;
    if (per_gram.level >= 0) contributor.level = levels[static_cast<std::size_t>(per_gram.level)];
    contributor.lower_level = per_gram.lower_level;
    contributor.m_factor_assumed = per_gram.m_factor_assumed;
    contributor.provenance = provenance(per_gram, entry, map.banding());

    if (per_gram.lower_level) cell.lower_level += grams;
    if (per_gram.unassessed) cell.unassessed += grams;
    if (per_gram.basis == HazardBasis::band) cell.share_on_bands += contributor.share;
    if (contributor.provenance.from_memory) cell.share_from_memory += contributor.share;
    if (per_gram.m_factor_assumed) cell.share_on_assumed_m += contributor.share;
    cell.contributors.push_back(std::move(contributor));
}

} // namespace

HazardGrid explain(const HazardMap& map, const Evaluation& evaluation) {
    const HazardScheme& scheme = map.scheme();
    const HazardValues values = map.evaluate(evaluation);
    HazardGrid grid{&scheme, &map.banding(), std::vector<HazardCell>(scheme.cell_count())};
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e) {
        const std::vector<std::string> levels = level_names(scheme.endpoints[e], map.banding());
        for (std::size_t p = 0; p < place_count; ++p) {
            const auto place = static_cast<HazardPlace>(p);
            const std::size_t index = cell_index(e, place);
            HazardCell& cell = grid.cells[index];
            cell.value = values.value[index];
            cell.low = values.low[index];
            cell.high = values.high[index];
            cell.short_term = values.short_term[index];
            cell.decades = decades(scheme.endpoints[e], cell.value);
            for (std::size_t c = 0; c < map.carriers().size(); ++c) {
                const double grams = map.grams(values, column_of(place), c);
                if (grams <= 0.0) continue;
                const HazardContribution per_gram = map.contribution(e, c);
                if (per_gram.counts()) add_contributor(cell, map, levels, map.carriers()[c], per_gram, grams);
            }
            std::sort(cell.contributors.begin(), cell.contributors.end(), comes_first);
        }
    }
    return grid;
}

} // namespace routeweigh
