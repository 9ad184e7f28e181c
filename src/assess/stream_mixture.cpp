// SPDX-License-Identifier: MIT
#include "assess/stream_mixture.hpp"

#include "assess/streams/flash_point.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

constexpr double little = 0.01; // of a halogenated solvent, by mass: the line of the rules for mixtures

bool is_gas(const Ingredient& ingredient) {
    return ingredient.substance->phase == Substance::Phase::gas;
}

bool is_halogenated_solvent(const Ingredient& ingredient) {
    return ingredient.mass_fraction >= little && ingredient.substance->phase == Substance::Phase::liquid &&
           streams::is_halogenated_organic(*ingredient.substance);
}

} // namespace

Mixture mixture_of(const streams::Composition& composition, std::string name, StreamKind kind) {
    Mixture mixture;
    mixture.name = std::move(name);
    const double total = composition.total();
    for (const streams::Portion& portion : composition.portions())
        mixture.ingredients.push_back({portion.substance, portion.grams / total, true, {}});
    const bool all_gas = std::all_of(mixture.ingredients.begin(), mixture.ingredients.end(), is_gas);
    if (kind == StreamKind::gas && all_gas) mixture.facts.phase = Substance::Phase::gas;
    if (kind == StreamKind::liquid && phase_of(mixture) == Substance::Phase::liquid)
        mixture.facts.phase = Substance::Phase::liquid;
    return mixture;
}

streams::Composition composition_of(const Mixture& mixture) {
    streams::Composition composition;
    for (const Ingredient& ingredient : mixture.ingredients)
        composition.add(*ingredient.substance, 100 * ingredient.mass_fraction);
    return composition;
}

void screen_flash_point(Mixture& mixture, const streams::MixedLiquids& liquids) {
    const auto& ingredients = mixture.ingredients;
    if (mixture.facts.flash_point || phase_of(mixture) != Substance::Phase::liquid ||
        std::any_of(ingredients.begin(), ingredients.end(), is_halogenated_solvent))
        return;
    const streams::FlashPoint found = streams::screen_flash_point(composition_of(mixture), liquids);
    using Verdict = streams::FlashPoint::Verdict;
    if (found.verdict == Verdict::estimated) {
        mixture.facts.flash_point = found.celsius;
        std::string& method = mixture.facts.flash_point_method;
        method = streams::flash_point_method(liquids);
        if (method.ends_with('.')) method.pop_back(); // stands in a list
        for (const std::string& assumption : found.assumptions)
            method += "; " + assumption;
    } else if (found.verdict == Verdict::above_range) {
        mixture.facts.flash_point = liquids.highest;
        mixture.facts.flashes_above = true;
        mixture.facts.flash_point_method =
            fmt::format("screened: {}; the end of the range stands for it", found.reason);
    }
}

} // namespace routeweigh
