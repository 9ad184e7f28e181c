// SPDX-License-Identifier: MIT
// Statements beside the classes: gas given off with acid or water, peroxides on standing, corroded airways.
//
// No rule dilutes them, so an ingredient's statement is carried over from a stated share on, or from the
// specific limit of its entry.
#include "assess/mixture/rules/rules.hpp"

#include "base/list.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::mixture_rules {
namespace {

constexpr std::string_view corrodes_airways = "EUH071";
constexpr double corrosive_percent = 1.0; // of an ingredient that corrodes airways by its own entry

bool gives_off_gas(std::string_view statement) {
    return statement == "EUH029" || statement == "EUH031" || statement == "EUH032";
}

bool reacts_with_water(std::string_view statement) {
    return statement == "EUH014" || statement == "EUH029";
}

double percent_from(const ResolvedIngredient& ingredient, const CarriedStatement& carried) {
    for (const SupplementalLimit& limit : ingredient.substance->supplemental_limits)
        if (limit.statement == carried.statement) return limit.min_percent;
    return carried.percent;
}

void carry(const ResolvedIngredient& ingredient, const CarriedStatement& carried,
           const ResolvedMixture& mixture, const MixtureResult* skin, MixtureResult& result) {
    const double from = percent_from(ingredient, carried);
    if (!mixture.neat() && !reaches(ingredient.percent, from)) {
        result.notes.push_back(fmt::format("{:.3g} % {} carries {} only from {:g} % on", ingredient.percent,
                                           ingredient.substance->name, carried.statement, from));
        return;
    }
    if (carried.statement == "EUH066" && skin != nullptr && skin->classified()) return; // says less
    if (carried.on_label) add_once(result.supplemental, carried.statement);
    result.notes.push_back(fmt::format("{} comes with {:.3g} % {}", carried.statement, ingredient.percent,
                                       ingredient.substance->name));
    if (reacts_with_water(carried.statement) && ingredient.substance->id != "water" &&
        mixture.percent_of("water") > 0)
        result.notes.push_back(fmt::format("{} does not last beside water; if both are there, they react",
                                           ingredient.substance->name));
}

// Corrosive and toxic to breathe, or corrosive by an ingredient that corrodes airways.
MixtureResult judge_airways(const ResolvedMixture& mixture, const std::vector<MixtureResult>& results) {
    MixtureResult result;
    result.endpoint = "corroded_airways";
    result.title = "Corrosive to the airways";
    const MixtureResult* skin = find_result(results, "skin");
    const MixtureResult* inhaled = find_result(results, "acute_inhalation");
    if (skin == nullptr || skin->hazard_class != "Skin Corr.") return result;
    if (inhaled != nullptr && inhaled->classified()) {
        result.supplemental.emplace_back(corrodes_airways);
        result.notes.emplace_back("corrosive, and toxic to breathe");
    }
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        const auto& own = ingredient.supplemental();
        if (!reaches(ingredient.percent, corrosive_percent) ||
            std::find(own.begin(), own.end(), corrodes_airways) == own.end())
            continue;
        add_once(result.supplemental, corrodes_airways);
        result.notes.push_back(fmt::format("corrosive, with {:.3g} % {}, which carries {}",
                                           ingredient.percent, ingredient.substance->name, corrodes_airways));
    }
    return result;
}

void judge_supplemental(const ResolvedMixture& mixture, const MixtureRules& rules,
                        std::vector<MixtureResult>& results) {
    MixtureResult gas, other;
    gas.endpoint = "gas_release";
    gas.title = "Gas with acid or water";
    other.endpoint = "other_statements";
    other.title = "Supplemental statements";
    const MixtureResult* skin = find_result(results, "skin");
    for (const ResolvedIngredient& ingredient : mixture.ingredients)
        for (const std::string& statement : ingredient.supplemental())
            for (const CarriedStatement& carried : rules.notes.carried)
                if (carried.statement == statement)
                    carry(ingredient, carried, mixture, skin, gives_off_gas(statement) ? gas : other);
    gas.unknown_percent = mixture.unknown_percent("gas_release");
    MixtureResult airways = judge_airways(mixture, results);
    for (MixtureResult* result : {&gas, &other, &airways})
        results.push_back(std::move(*result));
}

} // namespace

const MixtureRule supplemental_statements{"supplemental_statements", "CLP Annex II, part 1",
                                          judge_supplemental};

} // namespace routeweigh::mixture_rules
