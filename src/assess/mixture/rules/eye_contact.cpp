// SPDX-License-Identifier: MIT
// Damage and irritation of the eyes. What corrodes skin damages eyes; a substance with both classes counts
// once.
//
// A specific limit holds for its endpoint only. Where a corrosive substance irritates eyes up to some share,
// it damages them from there on.
#include "assess/mixture/contact_sum.hpp"
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/specific_limit.hpp"

#include <algorithm>

namespace routeweigh::mixture_rules {
namespace {

constexpr std::string_view damage = "Eye Dam.", eye_irritant = "Eye Irrit.", corrosive = "Skin Corr.";

// Which of its classes makes an ingredient one that damages eyes; "" where none does.
std::string_view damaging_class(const ResolvedIngredient& ingredient) {
    for (const std::string_view hazard_class : {damage, corrosive})
        if (ingredient.entry_of(hazard_class) != nullptr || lowest_band(ingredient, hazard_class) != nullptr)
            return hazard_class;
    return {};
}

// The share up to which its specific limits call it only irritating; none without such a limit.
std::optional<double> end_of_irritation(const ResolvedIngredient& ingredient) {
    std::optional<double> end;
    each_band(ingredient, eye_irritant, [&](const ConcentrationBand& band) {
        if (band.max_percent && (!end || *band.max_percent > *end)) end = band.max_percent;
    });
    return end;
}

class EyeSums {
  public:
    EyeSums(const ResolvedMixture& mixture, const MixtureRules& rules)
        : mixture_(mixture), limits_(rules.limits.eye) {}

    MixtureTest damaging() const {
        return ratio_test(mixture_, "ingredients that corrode skin or damage eyes", "1", limits_.source,
                          [&](const ResolvedIngredient& ingredient) { return damage_limit(ingredient); });
    }

    MixtureTest damaging_alone() const {
        return single_test(
            mixture_, "corrosive ingredients whose limits do not add up", "1", limits_.source,
            [&](const ResolvedIngredient& ingredient) {
                const std::string_view by = damaging_class(ingredient);
                if (by.empty() || !counts_alone(ingredient)) return std::optional<ContactLimit>();
                return std::optional(ContactLimit{limits_.not_additive_severe, false, by, "1"});
            });
    }

    MixtureTest irritating(std::string_view category) const {
        return ratio_test(mixture_, "irritating ingredients, and damaging ones tenfold", category,
                          limits_.source,
                          [&](const ResolvedIngredient& ingredient) { return irritant_limit(ingredient); });
    }

    MixtureTest irritating_alone(std::string_view category) const {
        return single_test(mixture_, "irritating ingredients whose limits do not add up", category,
                           limits_.source, [&](const ResolvedIngredient& ingredient) {
                               const GhsEntry* entry = ingredient.entry_of(eye_irritant);
                               if (entry == nullptr || !counts_alone(ingredient))
                                   return std::optional<ContactLimit>();
                               return std::optional(ContactLimit{limits_.not_additive_irritant, false,
                                                                 eye_irritant, entry->category});
                           });
    }

    // All that counts as an irritant is known to be of the milder category 2B.
    bool only_2b() const {
        for (const ResolvedIngredient& ingredient : mixture_.ingredients) {
            const GhsEntry* entry = ingredient.entry_of(eye_irritant);
            const bool mild = entry != nullptr && entry->category == "2B";
            if ((irritant_limit(ingredient) || (entry != nullptr && counts_alone(ingredient))) && !mild)
                return false;
        }
        return true;
    }

  private:
    bool adds_up_here(const ResolvedIngredient& ingredient) const {
        return adds_up(ingredient, damage, eye_irritant);
    }

    bool counts_alone(const ResolvedIngredient& ingredient) const {
        return !ingredient.unknown_for("eye") && !adds_up_here(ingredient);
    }

    bool counts_in_sum(const ResolvedIngredient& ingredient) const {
        return !ingredient.unknown_for("eye") && adds_up_here(ingredient) &&
               counts(ingredient, limits_.cut_off, damage, eye_irritant);
    }

    std::optional<ContactLimit> damage_limit(const ResolvedIngredient& ingredient) const {
        const std::string_view by = damaging_class(ingredient);
        if (by.empty() || !counts_in_sum(ingredient)) return std::nullopt;
        if (const ConcentrationBand* band = lowest_band(ingredient, damage))
            return ContactLimit{band->min_percent, true, damage, band->category};
        if (const auto end = end_of_irritation(ingredient)) return ContactLimit{*end, true, by, "1"};
        return ContactLimit{limits_.severe, false, by, "1"};
    }

    std::optional<ContactLimit> irritant_limit(const ResolvedIngredient& ingredient) const {
        if (!counts_in_sum(ingredient)) return std::nullopt;
        if (const ConcentrationBand* band = lowest_band(ingredient, eye_irritant))
            return ContactLimit{band->min_percent, true, eye_irritant, band->category};
        if (const std::string_view by = damaging_class(ingredient); !by.empty())
            return ContactLimit{limits_.severe_as_irritant, false, by, "1"};
        if (const GhsEntry* entry = ingredient.entry_of(eye_irritant))
            return ContactLimit{limits_.irritant, false, eye_irritant, entry->category};
        return std::nullopt;
    }

    const ResolvedMixture& mixture_;
    const ContactLimits& limits_;
};

void judge_eye(const ResolvedMixture& mixture, const MixtureRules& rules,
               std::vector<MixtureResult>& results) {
    MixtureResult result;
    result.endpoint = "eye";
    result.title = "Eyes";
    result.unknown_percent = mixture.unknown_percent("eye");
    const EyeSums sums(mixture, rules);
    const auto add = [&](MixtureTest test, std::string_view hazard_class, std::string_view statement) {
        if (!test.parts.empty() || test.kind == TestKind::value)
            add_test(result, std::move(test), hazard_class, statement);
    };
    const MixtureResult* skin = find_result(results, "skin");
    if (skin != nullptr && skin->hazard_class == corrosive) {
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = damage;
        result.category = "1";
        result.statement = "H318";
        result.notes.push_back("what corrodes the skin damages the eyes");
    }
    if (auto ph = ph_test(mixture, rules.limits.ph, damage, eye_irritant))
        add(std::move(*ph), damage, "H318");
    add(sums.damaging_alone(), damage, "H318");
    add(sums.damaging(), damage, "H318");
    if (!result.classified()) {
        const bool mild = rules.limits.eye.two_irritant_categories && sums.only_2b();
        const char* category = !rules.limits.eye.two_irritant_categories ? "2" : mild ? "2B" : "2A";
        const char* statement = mild ? "H320" : "H319";
        add(sums.irritating_alone(category), eye_irritant, statement);
        add(sums.irritating(category), eye_irritant, statement);
    }
    results.push_back(std::move(result));
}

} // namespace

const MixtureRule eye_contact{"eye", "GHS chapter 3.3", judge_eye};

} // namespace routeweigh::mixture_rules
