// SPDX-License-Identifier: MIT
#include "assess/mixture/aquatic_ingredient.hpp"

#include <cmath>

namespace routeweigh {
namespace {

// M = 10^k for a toxicity in the k-th decade below the limit: limit/10 < toxicity <= limit gives 1.
double m_factor_of(double mg_per_litre, double limit) {
    const double decades = std::floor(std::log10(limit / mg_per_litre) + 1e-9);
    return decades > 0 ? std::pow(10.0, decades) : 1.0;
}

AquaticClass of_data(int category, double m_factor) {
    return {category, m_factor, true, {}};
}

} // namespace

// Limits of the categories: CLP Annex I, Table 4.1.0 (memory); M-factors: Table 4.1.3 (memory).
std::optional<AquaticClass> aquatic_class(AquaticKind kind, double mg_per_litre, bool rapidly_degradable) {
    if (kind == AquaticKind::acute) {
        if (mg_per_litre <= 1) return of_data(1, m_factor_of(mg_per_litre, 1));
        if (mg_per_litre <= 10) return of_data(2, 1);
        if (mg_per_litre <= 100) return of_data(3, 1);
        return std::nullopt;
    }
    const double worst = rapidly_degradable ? 0.01 : 0.1;
    if (mg_per_litre <= worst) return of_data(1, m_factor_of(mg_per_litre, worst));
    if (mg_per_litre <= 10 * worst) return of_data(2, 1);
    if (rapidly_degradable && mg_per_litre <= 1) return of_data(3, 1);
    return std::nullopt;
}

std::optional<AquaticClass> aquatic_class(AquaticKind kind, const ResolvedIngredient& ingredient) {
    const std::string_view hazard_class = kind == AquaticKind::acute ? "Aquatic Acute" : "Aquatic Chronic";
    const GhsEntry* entry = ingredient.entry_of(hazard_class);
    if (entry == nullptr || entry->category.empty()) return std::nullopt;
    AquaticClass result;
    result.category = entry->category.front() - '0';
    result.hazard_class = hazard_class;
    if (entry->m_factor) {
        result.m_factor = *entry->m_factor;
        result.m_given = true;
    } else if (const auto toxicity = aquatic_toxicity(kind, ingredient)) {
        const auto by_data = aquatic_class(kind, *toxicity, ingredient.facts.aquatic.rapidly_degradable);
        result.m_factor = by_data ? by_data->m_factor : 1.0;
        result.m_given = true;
    }
    return result;
}

std::optional<double> aquatic_toxicity(AquaticKind kind, const ResolvedIngredient& ingredient) {
    const AquaticToxicity& facts = ingredient.facts.aquatic;
    return kind == AquaticKind::acute ? facts.acute_mg_per_litre : facts.chronic_mg_per_litre;
}

} // namespace routeweigh
