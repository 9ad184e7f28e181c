// SPDX-License-Identifier: MIT
// What must hold for any composition: nothing breaks, water makes nothing worse, order does not matter, a
// neat substance keeps its own classification.
#include "mixture_case.hpp"

#include "base/list.hpp"
#include "support/random_mixture.hpp"
#include "support/rounds.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>

using namespace routeweigh;
using namespace routeweigh::test;
using namespace routeweigh::test::mixtures;

namespace {

const std::vector<const Substance*>& substances() {
    static const auto all = Catalogue::embedded().all_substances();
    return all;
}

constexpr std::string_view health_and_water[] = {"acute_oral",
                                                 "acute_dermal",
                                                 "acute_inhalation",
                                                 "skin",
                                                 "eye",
                                                 "skin_sensitisation",
                                                 "respiratory_sensitisation",
                                                 "mutagenicity",
                                                 "carcinogenicity",
                                                 "lactation",
                                                 "reproductive_toxicity",
                                                 "target_organ_single",
                                                 "aspiration",
                                                 "drowsiness",
                                                 "airway_irritation",
                                                 "target_organ_repeated",
                                                 "aquatic_acute",
                                                 "aquatic_chronic"};

// Higher is worse; 0 where there is no class.
int severity(const MixtureResult& result) {
    if (!result.classified()) return 0;
    static const std::map<std::string, int> categories{{"1A", 9}, {"1", 8}, {"1B", 7}, {"1C", 6},
                                                       {"2A", 5}, {"2", 5}, {"2B", 4}, {"3", 3},
                                                       {"4", 2},  {"5", 1}, {"", 1}};
    const int category = categories.at(result.category);
    // Damage is worse than irritation of any category.
    return result.hazard_class == "Skin Corr." || result.hazard_class == "Eye Dam." ? 100 + category
                                                                                    : category;
}

Mixture with_water(const Mixture& mixture, double share_of_water) {
    Mixture diluted = mixture;
    for (Ingredient& ingredient : diluted.ingredients)
        ingredient.mass_fraction *= 1 - share_of_water;
    diluted.ingredients.push_back({Catalogue::embedded().find_substance("water"), share_of_water, false, {}});
    return diluted;
}

// The same entries hold before and after: water turns a neat gas into a solution with another entry, and
// shares by volume into shares by mass.
bool same_entries(const MixtureClassification& before, const MixtureClassification& after) {
    if (before.mixture.phase == Substance::Phase::gas) return false;
    for (const ResolvedIngredient& ingredient : before.mixture.ingredients)
        for (const ResolvedIngredient& other : after.mixture.ingredients)
            if (ingredient.substance == other.substance && ingredient.solution != other.solution)
                return false;
    return true;
}

std::string composition(const Mixture& mixture) {
    std::string text;
    for (const Ingredient& ingredient : mixture.ingredients)
        text += ingredient.substance->name + " " + std::to_string(100 * ingredient.mass_fraction) + " %; ";
    return text;
}

} // namespace

TEST_CASE("20,000 random compositions are classified, and water makes no hazard to health or water worse") {
    Dice dice(20261125);
    int classified = 0, compared = 0, milder = 0;
    for (int i = 0; i < rounds(20000); ++i) {
        const MixtureRules& by = rules(static_cast<MixtureRegime>(dice.below(3)));
        const Mixture mixture = random_mixture(dice, substances());
        const MixtureClassification before = classify(mixture, by);
        const double share = dice.one_in(2) ? dice.unit() : 1e-3 * dice.unit();
        const MixtureClassification after = classify(with_water(mixture, share), by);
        classified += !before.label.statements.empty();
        const std::vector<std::string>& precautions = before.label.precautions;
        REQUIRE(precautions.size() <= (contains(precautions, "P273") ? 7U : 6U));
        if (!same_entries(before, after)) continue;
        ++compared;
        for (const std::string_view endpoint : health_and_water) {
            const MixtureResult &first = *before.result(endpoint), &second = *after.result(endpoint);
            if (severity(second) > severity(first))
                FAIL_CHECK(words(by.regime) << ", " << endpoint << " was " << first.class_and_category()
                                            << ", is " << second.class_and_category() << " after " << share
                                            << " of water in " << composition(mixture));
            milder += severity(second) < severity(first);
        }
    }
    // The test would say nothing if little happened.
    CHECK(classified > rounds(15000));
    CHECK(compared > rounds(15000));
    CHECK(milder > rounds(8000));
}

TEST_CASE("the order of ingredients does not matter, nor whether one is listed in two parts") {
    Dice dice(7);
    for (int i = 0; i < 1000; ++i) {
        const Mixture mixture = random_mixture(dice, substances());
        Mixture other = mixture;
        std::reverse(other.ingredients.begin(), other.ingredients.end());
        // What is listed twice has the facts of its first listing.
        for (Ingredient& ingredient : other.ingredients)
            for (const Ingredient& first : mixture.ingredients)
                if (first.substance == ingredient.substance) {
                    ingredient.facts = first.facts;
                    break;
                }
        Ingredient half = other.ingredients.back();
        half.mass_fraction /= 2;
        other.ingredients.back() = half;
        other.ingredients.push_back(half);
        const auto first = classify(mixture, rules()), second = classify(other, rules());
        REQUIRE(statements(first) == statements(second));
        REQUIRE(first.label.supplemental == second.label.supplemental);
    }
}

TEST_CASE("a neat substance has the classes of its own entry") {
    for (const Substance* substance : substances()) {
        if (!substance->assessed) continue;
        CAPTURE(substance->name);
        const auto judged = classify(mixture_of(Catalogue::embedded().neat(*substance)), rules());
        for (const GhsEntry& entry : substance->ghs) {
            const bool there =
                std::any_of(judged.results.begin(), judged.results.end(), [&](const MixtureResult& result) {
                    return result.classified() && result.hazard_class == entry.hazard_class &&
                           result.statement == entry.statement &&
                           (result.category == entry.category || entry.hazard_class.ends_with("Sens."));
                });
            // Of two classes for one harm the more severe stands alone: corrosion beside irritation.
            const bool eyes_of_corrosive =
                entry.hazard_class == "Eye Irrit." || entry.hazard_class == "Skin Irrit.";
            const bool worse_there =
                std::any_of(judged.results.begin(), judged.results.end(), [&](const MixtureResult& result) {
                    return result.hazard_class == "Eye Dam." || result.hazard_class == "Skin Corr.";
                });
            CHECK_MESSAGE((there || (eyes_of_corrosive && worse_there)),
                          entry.hazard_class << " " << entry.category << " " << entry.statement);
        }
    }
}

TEST_CASE("what the notes say of substances holds for substances of the catalogue") {
    for (const TransportBand& transport : rules().notes.transport_bands)
        CHECK_MESSAGE(Catalogue::embedded().find_substance(transport.substance) != nullptr,
                      transport.substance);
    int acids = 0, alone = 0;
    for (const Substance* substance : substances()) {
        acids += rules().notes.nature(substance->id) == AcidBase::acid;
        alone += !rules().notes.why_not_additive(substance->id).empty();
    }
    CHECK(acids == 30); // each one named in the file was found
    CHECK(alone == 22);
}
