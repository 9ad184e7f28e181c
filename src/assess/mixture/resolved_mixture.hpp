// SPDX-License-Identifier: MIT
// A mixture as the rules see it: each substance once, by the entry that holds in it, in per cent.
//
// In a liquid a substance takes the entry of its aqueous solution where it has one and there is water to
// dissolve it, so that aqueous hydrogen bromide is no gas under pressure; a neat substance, a gas and a
// solution in something else keep the entry of the pure substance.
#pragma once

#include "assess/mixture/mixture.hpp"
#include "assess/mixture/substance_notes.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct ResolvedIngredient {
    const Substance* substance = nullptr;
    IngredientFacts facts;
    double percent = 0;    // by mass; by volume in a gas
    bool solution = false; // the entry of its solution holds
    AcidBase nature = AcidBase::unknown;
    bool additive = true;              // false: skin and eye limits do not add up for it
    std::string_view why_not_additive; // "" where additive

    std::span<const GhsEntry> ghs() const;
    const std::vector<std::string>& supplemental() const;
    const std::string& source() const; // of the entry
    bool assessed() const { return solution || substance->assessed; }
    // Nobody knows what it does here.
    bool unknown_for(std::string_view endpoint) const;
    const GhsEntry* entry_of(std::string_view hazard_class) const; // the first, or nullptr
};

struct ResolvedMixture {
    std::string name;
    Substance::Phase phase = Substance::Phase::liquid;
    bool phase_assumed = false; // nobody stated it
    MixtureFacts facts;
    std::vector<ResolvedIngredient> ingredients; // most of it first
    double unstated_percent = 0;                 // share of unknown composition

    bool neat() const { return ingredients.size() == 1 && unstated_percent == 0; }
    double percent_of(std::string_view substance_id) const;
    // Share of which nobody knows what it does here.
    double unknown_percent(std::string_view endpoint) const;
};

// The substances and the notes must outlive the result. Throws InputError with problems_of().
ResolvedMixture resolve(const Mixture& mixture, const SubstanceNotes& notes);

} // namespace routeweigh
