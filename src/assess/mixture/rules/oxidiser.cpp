// SPDX-License-Identifier: MIT
// Oxidising: solutions by the specific limits of their entries, everything else by test.
#include "assess/mixture/physical_entry.hpp"
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/specific_limit.hpp"

#include <fmt/format.h>

namespace routeweigh::mixture_rules {
namespace {

constexpr std::string_view oxidising_liquid = "Ox. Liq.";

// The specific limits of the class, the most severe first; one of them may hold.
void judge_bands(const ResolvedIngredient& ingredient, MixtureResult& result) {
    each_band(ingredient, oxidising_liquid, [&](const ConcentrationBand& band) {
        MixtureTest test;
        test.what = "specific limit of an oxidising liquid";
        test.category = band.category;
        test.limit = 1;
        test.source = "specific limit of the entry";
        MixturePart part;
        part.substance = ingredient.substance;
        part.percent = ingredient.percent;
        part.divisor = band.min_percent;
        part.term = ingredient.percent / band.min_percent;
        part.hazard_class = oxidising_liquid;
        part.category = band.category;
        part.specific = true;
        test.value = part.term;
        test.met = holds(band, ingredient.percent);
        test.parts.push_back(part);
        const bool decides =
            test.met && (!result.classified() || band.category < result.category); // worst of several
        result.tests.push_back(std::move(test));
        if (!decides) return;
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = oxidising_liquid;
        result.category = band.category;
        result.statement = band.statement;
        result.specific = true;
        if (!band.flags.empty()) result.notes.push_back(band.flags.front());
    });
}

void add_transport_class(const ResolvedIngredient& ingredient, const SubstanceNotes& notes,
                         MixtureResult& result) {
    for (const TransportBand& band : notes.transport_bands) {
        if (band.substance != ingredient.substance->id || !reaches(ingredient.percent, band.from_percent) ||
            (band.below_percent && reaches(ingredient.percent, *band.below_percent)))
            continue;
        result.notes.push_back(fmt::format("{} by transport class {} ({:.3g} % {})", band.statement,
                                           band.transport_class, ingredient.percent,
                                           ingredient.substance->name));
        if (!result.classified()) result.outcome = MixtureOutcome::test_needed;
    }
}

void judge_oxidiser(const ResolvedMixture& mixture, const MixtureRules& rules,
                    std::vector<MixtureResult>& results) {
    const SubstanceNotes& notes = rules.notes;
    MixtureResult result;
    result.endpoint = "oxidising";
    result.title = "Oxidising";
    result.unknown_percent = mixture.unknown_percent("oxidising");
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        if (mixture.phase == Substance::Phase::liquid) judge_bands(ingredient, result);
        add_transport_class(ingredient, notes, result);
    }
    if (!result.classified()) {
        for (const std::string_view hazard_class :
             {oxidising_liquid, std::string_view("Ox. Sol."), std::string_view("Ox. Gas")}) {
            if (hazard_class == "Ox. Gas" && mixture.phase != Substance::Phase::gas) continue;
            std::vector<PhysicalEntry> entries =
                physical_entries(mixture, hazard_class, notes.physical_percent, true);
            if (mixture.phase == Substance::Phase::liquid) // their specific limits have been judged
                std::erase_if(entries, [](const PhysicalEntry& found) {
                    return lowest_band(*found.ingredient, oxidising_liquid) != nullptr;
                });
            if (!result.classified())
                judge_physical(entries, mixture.neat(), test_for(notes, hazard_class), result);
        }
    }
    results.push_back(std::move(result));
}

} // namespace

const MixtureRule oxidiser{"oxidiser", "GHS chapters 2.4, 2.13 and 2.14", judge_oxidiser};

} // namespace routeweigh::mixture_rules
