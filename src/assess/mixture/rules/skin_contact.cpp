// SPDX-License-Identifier: MIT
// Corrosion and irritation of the skin.
//
// In this order: an extreme pH; corrosive acids, bases and others whose limits do not add up, each by itself;
// the sum of the corrosive, by subcategory; then the irritating in the same two ways. Corrosive ingredients
// count tenfold among the irritating.
#include "assess/mixture/contact_sum.hpp"
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/specific_limit.hpp"

#include <algorithm>

namespace routeweigh::mixture_rules {
namespace {

constexpr std::string_view skin_corrosive = "Skin Corr.", skin_irritant = "Skin Irrit.";

bool is_corrosive(const ResolvedIngredient& ingredient) {
    return ingredient.entry_of(skin_corrosive) != nullptr ||
           lowest_band(ingredient, skin_corrosive) != nullptr;
}

const GhsEntry* irritant_entry(const ResolvedIngredient& ingredient, bool mild) {
    for (const GhsEntry& entry : ingredient.ghs())
        if (entry.hazard_class == skin_irritant && (entry.category == "3") == mild) return &entry;
    return nullptr;
}

// "1A" is as severe as "1B" asks for; "1" says nothing of its subcategory.
bool as_severe_as(std::string_view category, std::string_view asked) {
    return asked.empty() || (category.size() == 2 && category <= asked);
}

// Category 1 without subcategory may be the worst there is, but 1A is known to be.
int severity(std::string_view category) {
    return category == "1A" ? 4 : category == "1B" ? 2 : category == "1C" ? 1 : 3;
}

class SkinSums {
  public:
    SkinSums(const ResolvedMixture& mixture, const MixtureRules& rules)
        : mixture_(mixture), limits_(rules.limits.skin) {}

    // `asked`: least severe subcategory that counts; "" for all.
    MixtureTest corrosives(std::string_view what, std::string_view asked, std::string_view category) const {
        return ratio_test(
            mixture_, what, category, limits_.source,
            [&](const ResolvedIngredient& ingredient) { return corrosive_limit(ingredient, asked); });
    }

    // The category is the worst of those that reach their limit.
    MixtureTest corrosives_alone() const {
        MixtureTest test =
            single_test(mixture_, "corrosive ingredients whose limits do not add up", "1", limits_.source,
                        [&](const ResolvedIngredient& ingredient) {
                            return limit_alone(ingredient, skin_corrosive, limits_.not_additive_severe);
                        });
        std::string_view worst;
        for (const MixturePart& part : test.parts)
            if (reaches(part.term, 1) && (worst.empty() || severity(part.category) > severity(worst)))
                worst = part.category;
        if (test.met) test.category = worst;
        return test;
    }

    MixtureTest irritants() const {
        return ratio_test(mixture_, "irritating ingredients, and corrosive ones tenfold", "2", limits_.source,
                          [&](const ResolvedIngredient& ingredient) { return irritant_limit(ingredient); });
    }

    MixtureTest irritants_alone() const {
        return single_test(mixture_, "irritating ingredients whose limits do not add up", "2", limits_.source,
                           [&](const ResolvedIngredient& ingredient) {
                               if (irritant_entry(ingredient, false) == nullptr)
                                   return std::optional<ContactLimit>();
                               return limit_alone(ingredient, skin_irritant, limits_.not_additive_irritant);
                           });
    }

    MixtureTest mild_irritants() const {
        return ratio_test(mixture_, "mildly irritating ingredients and all others", "3", limits_.source,
                          [&](const ResolvedIngredient& ingredient) {
                              const auto limit = irritant_limit(ingredient);
                              if (limit || !counts_here(ingredient)) return limit;
                              if (irritant_entry(ingredient, true) == nullptr) return limit;
                              return std::optional(ContactLimit{*limits_.mild, false, skin_irritant, "3"});
                          });
    }

    // A corrosive of category 1 that no subcategory is known of counts, so the mixture gets none either.
    bool subcategory_unknown() const {
        for (const ResolvedIngredient& ingredient : mixture_.ingredients) {
            const auto limit = corrosive_limit(ingredient, {});
            if (limit && limit->category.size() != 2) return true;
        }
        return false;
    }

  private:
    bool counts_here(const ResolvedIngredient& ingredient) const {
        return !ingredient.unknown_for("skin") &&
               counts(ingredient, limits_.cut_off, skin_corrosive, skin_irritant) &&
               adds_up(ingredient, skin_corrosive, skin_irritant);
    }

    std::optional<ContactLimit> limit_alone(const ResolvedIngredient& ingredient,
                                            std::string_view hazard_class, double percent) const {
        const GhsEntry* entry = ingredient.entry_of(hazard_class);
        if (entry == nullptr || ingredient.unknown_for("skin") ||
            adds_up(ingredient, skin_corrosive, skin_irritant))
            return std::nullopt;
        return ContactLimit{percent, false, entry->hazard_class, entry->category};
    }

    std::optional<ContactLimit> corrosive_limit(const ResolvedIngredient& ingredient,
                                                std::string_view asked) const {
        if (!counts_here(ingredient)) return std::nullopt;
        const ConcentrationBand* lowest = nullptr;
        each_band(ingredient, skin_corrosive, [&](const ConcentrationBand& band) {
            if (as_severe_as(band.category, asked) &&
                (lowest == nullptr || band.min_percent < lowest->min_percent))
                lowest = &band;
        });
        if (lowest != nullptr)
            return ContactLimit{lowest->min_percent, true, skin_corrosive, lowest->category};
        const GhsEntry* entry = ingredient.entry_of(skin_corrosive);
        if (entry == nullptr || !as_severe_as(entry->category, asked) ||
            lowest_band(ingredient, skin_corrosive) != nullptr)
            return std::nullopt;
        return ContactLimit{limits_.severe, false, skin_corrosive, entry->category};
    }

    std::optional<ContactLimit> irritant_limit(const ResolvedIngredient& ingredient) const {
        if (!counts_here(ingredient)) return std::nullopt;
        if (const ConcentrationBand* band = lowest_band(ingredient, skin_irritant))
            return ContactLimit{band->min_percent, true, skin_irritant, band->category};
        if (is_corrosive(ingredient))
            return ContactLimit{limits_.severe_as_irritant, false, skin_corrosive, "1"};
        if (const GhsEntry* entry = irritant_entry(ingredient, false))
            return ContactLimit{limits_.irritant, false, skin_irritant, entry->category};
        return std::nullopt;
    }

    const ResolvedMixture& mixture_;
    const ContactLimits& limits_;
};

void judge_skin(const ResolvedMixture& mixture, const MixtureRules& rules,
                std::vector<MixtureResult>& results) {
    MixtureResult result;
    result.endpoint = "skin";
    result.title = "Skin";
    result.unknown_percent = mixture.unknown_percent("skin");
    const SkinSums sums(mixture, rules);
    const auto add = [&](MixtureTest test, std::string_view hazard_class, std::string_view statement) {
        if (!test.parts.empty() || test.kind == TestKind::value)
            add_test(result, std::move(test), hazard_class, statement);
    };
    // Of all tests for corrosion the worst category counts.
    const auto add_corrosive = [&](MixtureTest test) {
        if (test.met && result.classified() && severity(test.category) > severity(result.category))
            result.outcome = MixtureOutcome::not_classified; // decided anew by this test
        add(std::move(test), skin_corrosive, "H314");
    };
    add_corrosive(sums.corrosives("corrosive ingredients, 1A", "1A", "1A"));
    if (auto ph = ph_test(mixture, rules.limits.ph, skin_corrosive, skin_irritant))
        add_corrosive(std::move(*ph));
    add_corrosive(sums.corrosives_alone());
    if (sums.subcategory_unknown()) {
        add_corrosive(sums.corrosives("corrosive ingredients", "", "1"));
    } else if (result.category != "1A") {
        // A sum that nothing has joined says nothing new.
        const MixtureTest first = sums.corrosives({}, "1A", {});
        MixtureTest second = sums.corrosives("corrosive ingredients, 1A and 1B", "1B", "1B");
        MixtureTest third = sums.corrosives("corrosive ingredients, 1A, 1B and 1C", "", "1C");
        const bool joined = third.parts.size() > second.parts.size() || is_above(third.value, second.value);
        if (second.parts.size() > first.parts.size() || is_above(second.value, first.value))
            add_corrosive(std::move(second));
        if (joined) add_corrosive(std::move(third));
    }
    if (!result.classified()) {
        add(sums.irritants_alone(), skin_irritant, "H315");
        MixtureTest irritants = sums.irritants();
        const ContactLimits& limits = rules.limits.skin;
        if (limits.mild) {
            MixtureTest short_of = irritants;
            add(std::move(irritants), skin_irritant, "H315");
            short_of.what = "irritating ingredients and corrosive ones tenfold, short of category 2";
            short_of.category = "3";
            short_of.limit = *limits.mild_irritant / limits.irritant;
            short_of.met = reaches(short_of.value, short_of.limit);
            if (!result.classified()) add(std::move(short_of), skin_irritant, "H316");
            if (!result.classified()) add(sums.mild_irritants(), skin_irritant, "H316");
        } else {
            add(std::move(irritants), skin_irritant, "H315");
        }
    }
    if (!mixture.facts.ph && !result.classified() &&
        std::any_of(mixture.ingredients.begin(), mixture.ingredients.end(),
                    [](const ResolvedIngredient& ingredient) {
                        return !ingredient.additive && is_corrosive(ingredient);
                    }))
        result.notes.push_back("the pH is not stated; at 2 or less and at 11.5 or more it would decide");
    results.push_back(std::move(result));
}

} // namespace

const MixtureRule skin_contact{"skin", "GHS chapter 3.2", judge_skin};

} // namespace routeweigh::mixture_rules
