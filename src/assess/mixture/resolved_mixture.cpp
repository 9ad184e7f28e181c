// SPDX-License-Identifier: MIT
#include "assess/mixture/resolved_mixture.hpp"

#include "assess/aqueous_entry.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

constexpr double least_unstated = 1e-4; // per cent; below is the rounding of the shares

// A pH of the ingredient itself that makes it a strong acid or base (CLP tables 3.2.4 and 3.3.4).
constexpr double strong_acid_ph = 2.0, strong_base_ph = 11.5;

bool takes_solution_entry(const Substance& substance, const ResolvedMixture& mixture, double percent) {
    if (!substance.ghs_solution || mixture.neat() || mixture.phase == Substance::Phase::gas) return false;
    if (mixture.phase == Substance::Phase::solid && substance.phase != Substance::Phase::gas) return false;
    return dissolves_in(mixture.percent_of("water"), substance, percent);
}

void set_nature(ResolvedIngredient& ingredient, const SubstanceNotes& notes) {
    ingredient.nature = notes.nature(ingredient.substance->id);
    ingredient.why_not_additive = notes.why_not_additive(ingredient.substance->id);
    const IngredientFacts& facts = ingredient.facts;
    if (facts.ph && *facts.ph <= strong_acid_ph) {
        ingredient.nature = AcidBase::acid;
        ingredient.why_not_additive = "an acid of pH 2 or less";
    } else if (facts.ph && *facts.ph >= strong_base_ph) {
        ingredient.nature = AcidBase::base;
        ingredient.why_not_additive = "a base of pH 11.5 or more";
    }
    if (facts.additive) {
        if (*facts.additive)
            ingredient.why_not_additive = {};
        else if (ingredient.why_not_additive.empty())
            ingredient.why_not_additive = "stated";
    }
    ingredient.additive = ingredient.why_not_additive.empty();
}

// A substance that is listed twice counts once, with its whole share: limits hold for substances.
std::vector<ResolvedIngredient> merged(const Mixture& mixture) {
    std::vector<ResolvedIngredient> ingredients;
    ingredients.reserve(mixture.ingredients.size());
    for (const Ingredient& given : mixture.ingredients) {
        if (!(given.mass_fraction > 0)) continue;
        const auto same = [&](const ResolvedIngredient& other) { return other.substance == given.substance; };
        const auto found = std::find_if(ingredients.begin(), ingredients.end(), same);
        if (found != ingredients.end()) {
            found->percent += 100 * given.mass_fraction;
            continue;
        }
        ResolvedIngredient ingredient;
        ingredient.substance = given.substance;
        ingredient.facts = given.facts;
        ingredient.percent = 100 * given.mass_fraction;
        ingredients.push_back(std::move(ingredient));
    }
    return ingredients;
}

// Mass to volume, which for gases is amount. The shares keep their sum.
void to_volume(std::vector<ResolvedIngredient>& ingredients) {
    double sum = 0, amount = 0;
    for (const ResolvedIngredient& ingredient : ingredients) {
        if (!(ingredient.substance->molar_mass > 0))
            throw InputError(Problem{Severity::error,
                                     "\"" + ingredient.substance->name +
                                         "\" has no molar mass, so its share by volume of a gas is unknown",
                                     {},
                                     {},
                                     {}});
        sum += ingredient.percent;
        amount += ingredient.percent / ingredient.substance->molar_mass;
    }
    for (ResolvedIngredient& ingredient : ingredients)
        ingredient.percent = sum * (ingredient.percent / ingredient.substance->molar_mass) / amount;
}

} // namespace

std::span<const GhsEntry> ResolvedIngredient::ghs() const {
    return solution ? substance->ghs_solution->ghs : substance->ghs;
}

const std::vector<std::string>& ResolvedIngredient::supplemental() const {
    return solution ? substance->ghs_solution->supplemental : substance->supplemental;
}

const std::string& ResolvedIngredient::source() const {
    return solution ? substance->ghs_solution->source : substance->ghs_source;
}

bool ResolvedIngredient::unknown_for(std::string_view endpoint) const {
    return !assessed() ||
           std::find(facts.unknown.begin(), facts.unknown.end(), endpoint) != facts.unknown.end();
}

const GhsEntry* ResolvedIngredient::entry_of(std::string_view hazard_class) const {
    for (const GhsEntry& entry : ghs())
        if (entry.hazard_class == hazard_class) return &entry;
    return nullptr;
}

double ResolvedMixture::percent_of(std::string_view substance_id) const {
    for (const ResolvedIngredient& ingredient : ingredients)
        if (ingredient.substance->id == substance_id) return ingredient.percent;
    return 0;
}

double ResolvedMixture::unknown_percent(std::string_view endpoint) const {
    double sum = unstated_percent;
    for (const ResolvedIngredient& ingredient : ingredients)
        if (ingredient.unknown_for(endpoint)) sum += ingredient.percent;
    return sum;
}

ResolvedMixture resolve(const Mixture& mixture, const SubstanceNotes& notes) {
    if (std::vector<Problem> problems = problems_of(mixture); !problems.empty())
        throw InputError(std::move(problems));
    ResolvedMixture resolved;
    resolved.name = mixture.name;
    resolved.phase = phase_of(mixture);
    resolved.phase_assumed = !mixture.facts.phase;
    resolved.facts = mixture.facts;
    resolved.ingredients = merged(mixture);
    double sum = 0;
    for (const ResolvedIngredient& ingredient : resolved.ingredients)
        sum += ingredient.percent;
    if (100 - sum > least_unstated) resolved.unstated_percent = 100 - sum;
    if (resolved.phase == Substance::Phase::gas && !mixture.facts.by_volume) to_volume(resolved.ingredients);

    for (ResolvedIngredient& ingredient : resolved.ingredients) {
        ingredient.solution = takes_solution_entry(*ingredient.substance, resolved, ingredient.percent);
        set_nature(ingredient, notes);
    }
    std::stable_sort(
        resolved.ingredients.begin(), resolved.ingredients.end(),
        [](const ResolvedIngredient& a, const ResolvedIngredient& b) { return a.percent > b.percent; });
    return resolved;
}

} // namespace routeweigh
