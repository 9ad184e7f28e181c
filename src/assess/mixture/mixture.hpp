// SPDX-License-Identifier: MIT
// What is to be classified: substances with their shares, and what is known of the mixture as a whole.
//
// Whatever is left out is unknown and is named as such in the result; nothing left out counts as harmless.
#pragma once

#include "base/problem.hpp"
#include "chemistry/material.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace routeweigh {

class Catalogue;

// Toxicity to water organisms as measured; counts where the substance has no class of its own.
struct AquaticToxicity {
    std::optional<double> acute_mg_per_litre;   // lowest LC50 or EC50
    std::optional<double> chronic_mg_per_litre; // lowest NOEC
    bool rapidly_degradable = false;
};

// What is known of an ingredient beyond its entry in the catalogue.
struct IngredientFacts {
    std::optional<double> ph;         // of the ingredient itself
    std::optional<bool> additive;     // false: skin and eye limits do not add up for it
    std::vector<std::string> unknown; // endpoints without usable data: "acute_oral", ...
    AquaticToxicity aquatic;
};

struct Ingredient {
    const Substance* substance = nullptr;
    double mass_fraction = 0; // of the mixture; by volume where MixtureFacts::by_volume
    bool dissolved = false;   // a gas that stays in the liquid although it has no entry as a solution
    IngredientFacts facts = {};
};

struct MixtureFacts {
    std::optional<Substance::Phase> phase; // where left out, from the phases of the ingredients
    std::optional<double> ph;
    std::optional<double> flash_point;       // degC, closed cup
    std::string flash_point_method;          // how it was found without a test; "" where it was measured
    bool flashes_above = false;              // somewhere above flash_point, if at all
    std::optional<double> boiling_point;     // degC, where boiling starts
    std::optional<double> viscosity;         // mm2/s, kinematic, at 40 degC
    std::optional<std::string> inhaled_form; // "gases", "vapours" or "dusts or mists"
    bool by_volume = false;                  // the shares are by volume (gases only)
};

// A share that the ingredients leave open, for they may sum to less than 1, is of unknown composition.
struct Mixture {
    std::string name;
    std::vector<Ingredient> ingredients;
    MixtureFacts facts = {};
};

// What stands in a bottle.
Mixture mixture_of(const Material& material);

// By names of the catalogue and per cent by mass. Throws InputError that names every unknown ingredient and
// the nearest spelling.
Mixture mixture_of(const Catalogue& catalogue, std::string name,
                   const std::vector<std::pair<std::string_view, double>>& percent_by_name);

// The phase that the facts state, else gas where every ingredient is one, liquid where a fifth or more of it
// is (or where nothing is solid), and solid.
Substance::Phase phase_of(const Mixture& mixture);

// Why it cannot be classified: no ingredients, shares that are negative, no numbers or above 100 % in sum, an
// unknown ingredient, a gas in a liquid or in a solid, facts that cannot be.
std::vector<Problem> problems_of(const Mixture& mixture);

} // namespace routeweigh
