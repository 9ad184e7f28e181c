// SPDX-License-Identifier: MIT
#include "assess/mixture/mixture_classification.hpp"

#include "assess/mixture/rule.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

constexpr double all_of_it = 99.99; // per cent
constexpr std::size_t usual_results = 32;

std::string_view phase_text(Substance::Phase phase) {
    switch (phase) {
    case Substance::Phase::gas:
        return "a gas";
    case Substance::Phase::liquid:
        return "a liquid";
    default:
        return "a solid";
    }
}

} // namespace

std::vector<std::string_view> MixtureClassification::undecided() const {
    std::vector<std::string_view> titles;
    for (const MixtureResult& result : results)
        if (result.outcome == MixtureOutcome::test_needed || result.outcome == MixtureOutcome::not_judged)
            titles.push_back(result.title);
    return titles;
}

std::vector<std::string> MixtureClassification::notes() const {
    std::vector<std::string> notes;
    if (mixture.phase_assumed)
        notes.push_back(fmt::format("its phase is not stated; from its ingredients it is taken as {}",
                                    phase_text(mixture.phase)));
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        if (ingredient.solution)
            notes.push_back(fmt::format("{}: the entry of its solution holds ({})",
                                        ingredient.substance->name,
                                        ingredient.substance->ghs_solution->applies_to));
        else if (ingredient.substance->phase == Substance::Phase::gas &&
                 mixture.phase != Substance::Phase::gas)
            notes.push_back(fmt::format("{}: a dissolved gas, by the entry of the gas without its classes of "
                                        "pressure and fire",
                                        ingredient.substance->name));
        if (!ingredient.assessed())
            notes.push_back(fmt::format("{}: nobody has assessed it; {:.3g} % of the mixture",
                                        ingredient.substance->name, ingredient.percent));
    }
    if (mixture.unstated_percent > 0)
        notes.push_back(fmt::format("{:.3g} % of the mixture is not stated", mixture.unstated_percent));
    return notes;
}

MixtureClassification classify(const Mixture& mixture, const MixtureRules& rules) {
    MixtureClassification classification;
    classification.regime = rules.limits.title;
    for (const BuildingBlock& block : rules.limits.blocks)
        if (block.on) classification.blocks.push_back(block.title);
    classification.mixture = resolve(mixture, rules.notes);
    const ResolvedMixture& resolved = classification.mixture;
    classification.unassessed_percent = resolved.unstated_percent;
    for (const ResolvedIngredient& ingredient : resolved.ingredients)
        if (!ingredient.assessed()) classification.unassessed_percent += ingredient.percent;

    std::vector<MixtureResult>& results = classification.results;
    results.reserve(usual_results);
    for (const MixtureRule* rule : mixture_rule_list())
        rule->judge(resolved, rules, results);
    for (MixtureResult& result : results)
        if (result.outcome == MixtureOutcome::not_classified && result.unknown_percent >= all_of_it) {
            result.outcome = MixtureOutcome::not_judged;
            result.notes.emplace_back("nobody has assessed what it is made of");
        }
    classification.label = make_label(results, rules);
    return classification;
}

std::string regime_text(const MixtureClassification& classification) {
    std::string text(classification.regime);
    if (!classification.blocks.empty()) text += ", with " + join(classification.blocks, "; ");
    return text;
}

} // namespace routeweigh
