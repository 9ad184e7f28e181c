// SPDX-License-Identifier: MIT
#include "assess/mixture/flash_point.hpp"

#include "assess/hazard/statement.hpp"
#include "assess/mixture/specific_limit.hpp"
#include "chemistry/crystal_water.hpp"
#include "chemistry/element.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

constexpr double least_percent = 1.0; // of a flammable or halogenated ingredient that counts
constexpr double mostly_flammable =
    50; // per cent by mass; our line: from there on it counts as what burns in it
constexpr double lowest_searched = -100, highest_searched = 200; // degC

bool is_flammable_liquid(const GhsEntry& entry) {
    return entry.hazard_class == "Flam. Liq.";
}

// True where the entry, or that of suppliers, calls it a flammable liquid at this share.
bool classified_flammable(const ResolvedIngredient& ingredient) {
    const auto ghs = ingredient.ghs();
    const auto& added = ingredient.substance->supplier_additions;
    return std::any_of(ghs.begin(), ghs.end(), is_flammable_liquid) ||
           std::any_of(added.begin(), added.end(), is_flammable_liquid);
}

// The highest flash point that the class of a substance without a measured one allows.
double flash_point_of_class(const ResolvedIngredient& ingredient) {
    double highest = 60;
    const auto look = [&](const GhsEntry& entry) {
        const int number = statement_number(entry.statement);
        if (is_flammable_liquid(entry) && (number == 224 || number == 225)) highest = 22.9;
    };
    for (const GhsEntry& entry : ingredient.ghs())
        look(entry);
    for (const GhsEntry& entry : ingredient.substance->supplier_additions)
        look(entry);
    return highest;
}

// A specific limit says from which share on a solution is flammable.
bool below_specific_limit(const ResolvedIngredient& ingredient) {
    const ConcentrationBand* band = lowest_band(ingredient, "Flam. Liq.");
    return band != nullptr && !begins(*band, ingredient.percent);
}

bool has_halogen_and_carbon(const Formula& formula) {
    const auto holds = [&](const char* symbol) { return atoms_of(formula, *element_by_symbol(symbol)) > 0; };
    return holds("C") && (holds("F") || holds("Cl") || holds("Br") || holds("I"));
}

bool halogenated_solvent(const ResolvedIngredient& ingredient) {
    return ingredient.percent >= least_percent && ingredient.substance->phase == Substance::Phase::liquid &&
           has_halogen_and_carbon(ingredient.substance->formula);
}

std::vector<FlammablePart> flammable_parts(const ResolvedMixture& mixture, double highest) {
    std::vector<FlammablePart> parts;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        if (!reaches(ingredient.percent, least_percent)) continue;
        if (below_specific_limit(ingredient)) continue;
        const Substance& substance = *ingredient.substance;
        const bool by_class = classified_flammable(ingredient);
        const bool by_point = substance.flash_point && *substance.flash_point <= highest &&
                              substance.phase == Substance::Phase::liquid;
        if (by_class || by_point)
            parts.push_back({&ingredient, substance.flash_point ? *substance.flash_point
                                                                : flash_point_of_class(ingredient)});
    }
    std::sort(parts.begin(), parts.end(),
              [](const FlammablePart& a, const FlammablePart& b) { return a.flash_point < b.flash_point; });
    return parts;
}

// Liaw's method with the constants at hand; none where one is missing or there is no water to be non-ideal
// with.
std::optional<double> by_activity(const ResolvedMixture& mixture, const std::vector<FlammablePart>& flammable,
                                  const FlashPointData& data) {
    const double water = mixture.percent_of("water");
    if (!(water > 0)) return std::nullopt;
    std::vector<VolatilePart> parts;
    for (const FlammablePart& part : flammable) {
        const Substance& substance = *part.ingredient->substance;
        const AntoineConstants* antoine = data.antoine(substance.id);
        const WaterPair* pair = data.with_water(substance.id);
        if (antoine == nullptr || pair == nullptr || !(substance.molar_mass > 0)) return std::nullopt;
        parts.push_back({part.ingredient->percent / substance.molar_mass, part.flash_point, *antoine, *pair});
    }
    return liaw_flash_point(parts, water / molar_mass_of_water).value_or(highest_searched);
}

// Van Laar's activity coefficients for several solvents in water. With q = 1 for water and q_i = A_iw / A_wi,
//
//   ln g_i = q_i (A_wi z_w [i is a solvent] - z_w sum over solvents j of A_wj z_j)
//
// z being x weighted with q; among solvents mixing is taken as ideal. For one solvent this is van Laar's
// equation. Never below 1, for that would raise the flash point.
std::vector<double> activity_coefficients(const std::vector<VolatilePart>& parts, double moles_of_water) {
    double sum = moles_of_water;
    std::vector<double> size(parts.size());
    for (std::size_t i = 0; i < parts.size(); ++i) {
        size[i] = parts[i].with_water.solvent_in_water / parts[i].with_water.water_in_solvent;
        sum += size[i] * parts[i].moles;
    }
    const double z_water = moles_of_water / sum;
    double excess = 0;
    for (std::size_t i = 0; i < parts.size(); ++i)
        excess += parts[i].with_water.water_in_solvent * z_water * (size[i] * parts[i].moles / sum);
    std::vector<double> coefficients(parts.size());
    for (std::size_t i = 0; i < parts.size(); ++i)
        coefficients[i] =
            std::exp(std::max(0.0, size[i] * (parts[i].with_water.water_in_solvent * z_water - excess)));
    return coefficients;
}

} // namespace

std::optional<double> liaw_flash_point(const std::vector<VolatilePart>& parts, double moles_of_water,
                                       bool ideal) {
    double moles = moles_of_water;
    for (const VolatilePart& part : parts)
        moles += part.moles;
    const std::vector<double> coefficients =
        ideal ? std::vector<double>(parts.size(), 1.0) : activity_coefficients(parts, moles_of_water);
    const auto sum_at = [&](double celsius) {
        double sum = 0;
        for (std::size_t i = 0; i < parts.size(); ++i)
            sum += parts[i].moles / moles * coefficients[i] * parts[i].antoine.pressure(celsius) /
                   parts[i].antoine.pressure(parts[i].flash_point);
        return sum;
    };
    double low = lowest_searched, high = highest_searched;
    if (sum_at(high) < 1 || sum_at(low) > 1) return std::nullopt;
    while (high - low > 1e-6) {
        const double middle = 0.5 * (low + high);
        (sum_at(middle) < 1 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

FlashPoint flash_point_of(const ResolvedMixture& mixture, const FlashPointData& data, double highest) {
    FlashPoint found;
    found.flammable = flammable_parts(mixture, highest);
    if (mixture.facts.flash_point) {
        found.method = FlashPointMethod::measured;
        found.celsius = mixture.facts.flash_point;
    } else if (!found.flammable.empty()) {
        const auto& all = mixture.ingredients;
        if (mixture.neat()) {
            found.method = FlashPointMethod::neat;
            found.celsius = found.flammable.front().flash_point;
        } else if (std::any_of(all.begin(), all.end(), halogenated_solvent)) {
            found.method = FlashPointMethod::halogenated;
            double percent = 0;
            for (const FlammablePart& part : found.flammable)
                percent += part.ingredient->percent;
            if (percent > mostly_flammable) found.celsius = found.flammable.front().flash_point;
        } else if (const auto estimate = by_activity(mixture, found.flammable, data)) {
            found.method = FlashPointMethod::activity;
            found.celsius = estimate;
        } else {
            found.method = FlashPointMethod::lowest;
            found.celsius = found.flammable.front().flash_point;
        }
    }
    return found;
}

} // namespace routeweigh
