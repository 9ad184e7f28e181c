// SPDX-License-Identifier: MIT
// Limiting reagent, theoretical yield and percent yield, each at amounts that differ from version to version.
#include "base/index.hpp"
#include "documents/number.hpp"
#include "documents/questions/kinds.hpp"
#include "documents/shared_figure.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace routeweigh::documents {
namespace {

/// The sheet with one reactant weighed differently.
struct Changed {
    const bench::Reagent* reagent = nullptr;
    double grams = 0;
    bench::Theory theory;
};

/// Charges that bring a reactant of the overall equation and can hence run out.
std::vector<const bench::Reagent*> reactant_charges(const bench::BenchStep& step) {
    std::vector<const bench::Reagent*> found;
    for (const bench::Reagent& reagent : step.reagents)
        if (reagent.counted != nullptr && reagent.stage <= step.theory.last_stage &&
            step.step->overall.coefficient_of(reagent.counted) < 0)
            found.push_back(&reagent);
    return found;
}

/// Draws until it is clear which reactant limits; nothing where the step has fewer than two that may.
std::optional<Changed> changed_sheet(const QuestionSource& source) {
    if (source.step.theory.supplies.size() < 2) return {};
    const auto charges = reactant_charges(source.step);
    if (charges.empty()) return {};
    const FlatRoute& flat = source.assessment().flat();
    for (int attempt = 0; attempt < 40; ++attempt) {
        Changed changed;
        changed.reagent = source.dice.one_of(charges);
        changed.grams = as_printed(changed.reagent->grams * source.dice.between(0.5, 1.5));
        if (std::abs(changed.grams - changed.reagent->grams) < 0.02 * changed.reagent->grams) continue;
        Inputs inputs = flat.nominal();
        for (const Inflow& inflow : flat.inflows())
            if (inflow.step == source.step.index && inflow.stage == changed.reagent->stage &&
                inflow.charge == changed.reagent->number)
                inputs.charged[at(inflow.slot)] = changed.grams;
        changed.theory = bench::theory_of(flat, inputs, flat.evaluate(inputs), source.step.index);
        const auto& supplies = changed.theory.supplies;
        if (changed.theory.by_supply && supplies[1].runs > 1.08 * supplies[0].runs && supplies[0].runs > 0)
            return changed;
    }
    return {};
}

std::string sheet_text(const QuestionSource& source, const Changed& changed) {
    return fmt::format("The step {} is run by the bench sheet, with one difference: {} g of {} is taken.",
                       source.step.step->overall.text, digits(changed.grams, 3),
                       changed.reagent->material().name);
}

std::vector<std::string> supply_lines(const bench::Theory& theory) {
    std::vector<std::string> lines;
    for (const ReactantSupply& supply : theory.supplies)
        lines.push_back(fmt::format("{}: {} mmol / {} = {} mmol", supply.substance->name,
                                    digits(1000 * supply.moles, 4), fmt::format("{:g}", supply.coefficient),
                                    digits(1000 * supply.runs, 4)));
    return lines;
}

/// Grams of a reactant as it is, without its water.
double grams_of(const ReactantSupply& supply) {
    return supply.moles * supply.substance->molar_mass;
}

} // namespace

Question ask_limiting_reagent(const QuestionSource& source) {
    const auto changed = changed_sheet(source);
    if (!changed) return {};
    const auto& supplies = changed->theory.supplies;
    Question question;
    question.id = "limiting_reagent";
    question.title = "Limiting reagent";
    question.text = sheet_text(source, *changed) + " Which reactant runs out first?";
    const auto least = [&](auto measure) {
        return std::min_element(supplies.begin(), supplies.end(),
                                [&](const auto& a, const auto& b) { return measure(a) < measure(b); })
            ->substance;
    };
    const Substance* by_mass = least([](const ReactantSupply& supply) { return grams_of(supply); });
    const Substance* by_moles = least([](const ReactantSupply& supply) { return supply.moles; });
    for (const ReactantSupply& supply : supplies) {
        Choice choice{supply.substance->name, supply.substance == supplies.front().substance, ""};
        if (!choice.right) {
            choice.why =
                fmt::format("it would last for {} mmol of the reaction", digits(1000 * supply.runs, 4));
            if (supply.substance == by_moles)
                choice.why += "; the smallest amount was taken without its coefficient";
            else if (supply.substance == by_mass)
                choice.why += "; the smallest mass of pure substance was taken for the smallest amount";
        }
        question.choices.push_back(std::move(choice));
    }
    question.working = supply_lines(changed->theory);
    return question;
}

Question ask_theoretical_yield(const QuestionSource& source) {
    const auto changed = changed_sheet(source);
    if (!changed) return {};
    const bench::Theory& theory = changed->theory;
    const Substance& product = *source.step.step->product;
    Question question;
    question.id = "theoretical_yield";
    question.title = "Theoretical yield";
    question.text = fmt::format("{} What is the theoretical yield of {}, in grams?",
                                sheet_text(source, *changed), product.name);
    question.answer = theory.grams;
    question.unit = "g";
    const ReactantSupply& limiting = theory.limiting();
    const double per_run = theory.coefficient * product.molar_mass;
    for (std::size_t i = 1; i < theory.supplies.size(); ++i)
        question.wrong.push_back(
            {theory.supplies[i].runs * per_run,
             fmt::format("took {} for the limiting reagent", theory.supplies[i].substance->name)});
    question.wrong.push_back({grams_of(limiting),
                              "took the mass of the limiting reagent for the mass of product: a "
                              "mass ratio in place of the mole ratio"});
    question.wrong.push_back({limiting.moles * per_run, "left the coefficient of the limiting reagent out"});
    question.wrong.push_back({limiting.runs * theory.coefficient * limiting.substance->molar_mass,
                              "multiplied with the molar mass of the reactant in place of the product's"});
    for (const bench::Reagent& reagent : source.step.reagents)
        if (reagent.counted == limiting.substance && !reagent.material().is_neat()) {
            const double pure = reagent.material().component_of(*limiting.substance)->mass_fraction;
            question.wrong.push_back(
                {theory.grams / pure, fmt::format("took {} as pure", reagent.material().name)});
        }
    question.working = supply_lines(theory);
    question.working.push_back(fmt::format("limiting: {}; {} mmol × {} × {} g/mol = {} g",
                                           limiting.substance->name, digits(1000 * limiting.runs, 4),
                                           fmt::format("{:g}", theory.coefficient),
                                           fixed(product.molar_mass, 2), balance_text(theory.grams)));
    return question;
}

Question ask_percent_yield(const QuestionSource& source) {
    const bench::Theory& theory = source.step.theory;
    const Substance& product = *source.step.step->product;
    if (!(theory.grams > 0) || theory.supplies.empty()) return {};
    const double isolated = as_printed(theory.grams * source.dice.between(0.45, 0.93));
    Question question;
    question.id = "percent_yield";
    question.title = "Percent yield";
    question.text =
        fmt::format("A student took the amounts of the bench sheet and weighed {} g of dry {}. What is "
                    "the percent yield?",
                    digits(isolated, 3), product.name);
    question.answer = 100 * isolated / theory.grams;
    question.unit = "%";
    question.wrong.push_back(
        {100 * isolated / grams_of(theory.limiting()),
         fmt::format("divided by the mass of {}: a mass ratio in place of the mole ratio",
                     theory.limiting().substance->name)});
    for (std::size_t i = 1; i < theory.supplies.size(); ++i)
        question.wrong.push_back(
            {100 * isolated / (theory.supplies[i].runs * theory.coefficient * product.molar_mass),
             fmt::format("took {} for the limiting reagent", theory.supplies[i].substance->name)});
    question.wrong.push_back({100 * isolated / theory.isolated,
                              "divided by the mass that is usually isolated, not by the theoretical yield"});
    question.wrong.push_back({100 * theory.grams / isolated, "turned the fraction upside down"});
    question.working = {fmt::format("theoretical yield by the sheet: {} g", balance_text(theory.grams)),
                        fmt::format("{} g / {} g = {} %", digits(isolated, 3), balance_text(theory.grams),
                                    fixed(question.answer, 1))};
    return question;
}

} // namespace routeweigh::documents
