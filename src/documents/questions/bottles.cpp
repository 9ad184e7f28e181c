// SPDX-License-Identifier: MIT
// What a bottle really holds: a solution is not pure, a hydrate brings its water, equivalents count moles.
#include "chemistry/crystal_water.hpp"
#include "documents/number.hpp"
#include "documents/questions/kinds.hpp"
#include "documents/shared_figure.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace routeweigh::documents {
namespace {

std::vector<const bench::Reagent*> charges_where(const QuestionSource& source, auto fits) {
    std::vector<const bench::Reagent*> found;
    for (const bench::BenchStep& step : source.experiment.steps())
        for (const bench::Reagent& reagent : step.reagents)
            if (reagent.counted != nullptr && fits(reagent)) found.push_back(&reagent);
    return found;
}

} // namespace

Question ask_solution(const QuestionSource& source) {
    const auto charges = charges_where(source, [](const bench::Reagent& reagent) {
        return reagent.millilitres && !reagent.material().is_neat() &&
               reagent.material().component_of(*reagent.counted)->mass_fraction < 0.9;
    });
    if (charges.empty()) return {};
    const bench::Reagent& reagent = *source.dice.one_of(charges);
    const Substance& counted = *reagent.counted;
    const double share = reagent.material().component_of(counted)->mass_fraction;
    const double density = *reagent.material().density;
    const double volume = as_printed(*reagent.millilitres * source.dice.between(0.5, 1.6));
    Question question;
    question.id = "solution";
    question.title = "What a solution holds";
    question.text =
        fmt::format("How many millimoles of {} are in {} mL of {}? It holds {} % of it by mass and has a "
                    "density of {} g/mL; the molar mass is {} g/mol.",
                    counted.name, digits(volume, 3), reagent.material().name, digits(100 * share, 3),
                    digits(density, 4), fixed(counted.molar_mass, 2));
    const double per_gram = 1000 / counted.molar_mass;
    question.answer = volume * density * share * per_gram;
    question.unit = "mmol";
    question.wrong = {{volume * density * per_gram, "took the solution as pure"},
                      {volume * share * per_gram, "took millilitres for grams: the density is left out"},
                      {volume * per_gram, "took millilitres of solution for grams of the pure substance"},
                      {volume / density * share * per_gram, "divided by the density"}};
    question.working = {fmt::format("{} mL × {} g/mL × {} / {} g/mol = {} mmol", digits(volume, 3),
                                    digits(density, 4), digits(share, 3), fixed(counted.molar_mass, 2),
                                    digits(question.answer, 3))};
    return question;
}

Question ask_hydrate(const QuestionSource& source) {
    const auto charges = charges_where(
        source, [](const bench::Reagent& reagent) { return crystal_water(*reagent.counted) > 0; });
    if (charges.empty()) return {};
    const bench::Reagent& reagent = *source.dice.one_of(charges);
    const Substance& hydrate = *reagent.counted;
    const int waters = crystal_water(hydrate);
    const double dry = anhydrous_molar_mass(hydrate);
    const double grams = as_printed(hydrate.molar_mass * reagent.moles * source.dice.between(0.6, 1.8));
    Question question;
    question.id = "hydrate";
    question.title = "A salt with its water";
    question.text =
        fmt::format("{} g of {} are weighed. The salt without its water has a molar mass of {} g/mol, and "
                    "one mol of crystals holds {} mol of water ({} g/mol). How many millimoles of the "
                    "salt are that?",
                    digits(grams, 3), hydrate.name, fixed(dry, 2), waters, molar_mass_of_water);
    question.answer = 1000 * grams / hydrate.molar_mass;
    question.unit = "mmol";
    question.wrong = {{1000 * grams / dry, "left the crystal water out of the molar mass"},
                      {1000 * grams / (dry + molar_mass_of_water), "counted one water only"}};
    question.working = {fmt::format("{} + {} × {} = {} g/mol", fixed(dry, 2), waters, molar_mass_of_water,
                                    fixed(hydrate.molar_mass, 2)),
                        fmt::format("{} g / {} g/mol = {} mmol", digits(grams, 3),
                                    fixed(hydrate.molar_mass, 2), digits(question.answer, 3))};
    return question;
}

Question ask_equivalents(const QuestionSource& source) {
    const Substance* reference = source.step.step->reference;
    const bench::Reagent* base = nullptr;
    std::vector<const bench::Reagent*> others;
    for (const bench::Reagent& reagent : source.step.reagents) {
        if (reagent.counted == nullptr) continue;
        if (reagent.counted == reference)
            base = &reagent;
        else if (reagent.charge->role->reactant)
            others.push_back(&reagent);
    }
    if (base == nullptr || others.empty()) return {};
    const bench::Reagent& reagent = *source.dice.one_of(others);
    const double moles = base->moles * source.dice.between(0.7, 1.4);
    const double grams =
        as_printed(moles * reference->molar_mass / base->material().component_of(*reference)->mass_fraction);
    const double base_moles =
        grams * base->material().component_of(*reference)->mass_fraction / reference->molar_mass;
    Question question;
    question.id = "equivalents";
    question.title = "Equivalents";
    question.text =
        fmt::format("To {} g of {} comes {} g of {}. How many equivalents of {} are that, counted to {}?",
                    digits(grams, 3), base->material().name, balance_text(reagent.grams),
                    reagent.material().name, reagent.counted->name, reference->name);
    question.answer = reagent.moles / base_moles;
    question.unit = "eq";
    question.wrong = {{reagent.grams / grams, "divided masses in place of moles"},
                      {base_moles / reagent.moles, "turned the fraction upside down"}};
    const double share = reagent.material().component_of(*reagent.counted)->mass_fraction;
    if (!reagent.material().is_neat())
        question.wrong.push_back(
            {question.answer / share, fmt::format("took {} as pure", reagent.material().name)});
    question.working = {fmt::format("{}: {} mmol", reference->name, digits(1000 * base_moles, 4)),
                        fmt::format("{}: {} g × {} / {} g/mol = {} mmol", reagent.counted->name,
                                    balance_text(reagent.grams), digits(share, 4),
                                    fixed(reagent.counted->molar_mass, 2), digits(1000 * reagent.moles, 4)),
                        fmt::format("{} / {} = {} eq", digits(1000 * reagent.moles, 4),
                                    digits(1000 * base_moles, 4), digits(question.answer, 3))};
    return question;
}

} // namespace routeweigh::documents
