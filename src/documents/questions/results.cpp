// SPDX-License-Identifier: MIT
// What a result says: above a hundred per cent, over several steps, atom economy beside waste.
#include "documents/number.hpp"
#include "documents/questions/kinds.hpp"
#include "documents/shared_figure.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace routeweigh::documents {

Question ask_above_hundred(const QuestionSource& source) {
    const bench::Theory& theory = source.step.theory;
    if (!(theory.grams > 0)) return {};
    const double share = source.dice.between(1.04, 1.2);
    Question question;
    question.id = "above_hundred";
    question.title = "Above a hundred per cent";
    question.text =
        fmt::format("A student took the amounts of the bench sheet and weighs {} g of {}. That is more than "
                    "the theoretical yield. What comes first?",
                    balance_text(theory.grams * share), source.step.step->product->name);
    question.choices = {{"dry it further and weigh again until the mass stays the same", true, ""},
                        {"report 100 %", false, "changes the result and not its cause"},
                        {"report the figure as it is: a good yield", false,
                         "more product than the limiting reagent allows cannot form"},
                        {"weigh out a larger amount of the limiting reagent next time", false,
                         "moves the theoretical yield and leaves the cause where it is"},
                        {"count from the isolated mass which reagent was limiting", false,
                         "the limiting reagent follows from what was charged, not from what came out"}};
    question.working = {
        "A mass above the theoretical yield holds something else: mostly water or solvent, then salt, "
        "then starting material, or a dish that was not tared.",
        "Constant mass rules solvent out; a melting range tests the rest."};
    return question;
}

Question ask_overall_yield(const QuestionSource& source) {
    const auto& steps = source.experiment.steps();
    const ScalePlan& plan = source.assessment().flat().scale_plan();
    if (plan.has_loop()) return {};
    std::vector<double> yields;
    for (const bench::BenchStep& step : steps)
        yields.push_back(step.theory.yield());
    // Steps beside each other are not multiplied: the same rule as of the figure "yield".
    const std::vector<int> line = plan.longest_sequence(yields);
    if (line.size() < 2) return {};
    Question question;
    question.id = "overall_yield";
    question.title = "Yield over all steps";
    std::string listed;
    double product = 1, sum = 0, least = 1;
    for (const int step : line) {
        const double yield =
            std::round(100 * yields[static_cast<std::size_t>(step)] * source.dice.between(0.8, 1.0)) / 100;
        listed += (listed.empty() ? "" : ", ") + fmt::format("{:.0f} %", 100 * yield);
        product *= yield;
        sum += yield;
        least = std::min(least, yield);
    }
    question.text =
        fmt::format("The {} steps of {} to {} give {}. What is the yield over all of them?", line.size(),
                    line.size() == steps.size() ? "a line from the first substrate"
                                                : "the longest line, branches beside it left out,",
                    source.experiment.route().product->name, listed);
    question.answer = 100 * product;
    question.unit = "%";
    question.wrong = {{100 * sum / static_cast<double>(line.size()), "took the mean of the steps"},
                      {100 * least, "took the lowest step alone"},
                      {100 * sum, "added the yields"}};
    const double losses = 100 - (100 * static_cast<double>(line.size()) - 100 * sum);
    if (losses > 0) question.wrong.push_back({losses, "added the losses"});
    question.working = {fmt::format("the product of {}: {} %", listed, digits(100 * product, 3))};
    return question;
}

Question ask_atom_economy(const QuestionSource& source) {
    const SubstanceEquation& overall = source.step.step->overall;
    const Substance& product = *source.step.step->product;
    double reactants = 0, first = 0;
    std::string terms;
    for (const auto& part : overall.parts) {
        if (part.coefficient >= 0) continue;
        const double grams = -part.coefficient * part.substance->molar_mass;
        if (!(grams > 0)) return {};
        if (part.substance == source.step.step->reference) first = grams;
        reactants += grams;
        terms += (terms.empty() ? "" : " + ") +
                 (part.coefficient == -1 ? fixed(part.substance->molar_mass, 2)
                                         : fmt::format("{} × {}", fmt::format("{:g}", -part.coefficient),
                                                       fixed(part.substance->molar_mass, 2)));
    }
    const double made = overall.coefficient_of(&product) * product.molar_mass;
    if (!(reactants > 0) || !(made > 0)) return {};
    Question question;
    question.id = "atom_economy";
    question.title = "Atom economy";
    question.text = fmt::format("What is the atom economy of {} for {}?", overall.text, product.name);
    question.answer = 100 * made / reactants;
    question.unit = "%";
    if (first > 0) question.wrong.push_back({100 * made / first, "divided by the main reactant only"});
    question.wrong.push_back({100 * made / reactants * source.step.theory.yield(),
                              "multiplied with the yield: atom economy is of the equation, not of the run"});
    const double e_factor = source.assessment().metric("complete_e_factor");
    if (e_factor > 0)
        question.wrong.push_back({100 / (1 + e_factor),
                                  "took the share of product in all that is charged: solvents, "
                                  "water and excess are no part of atom economy"});
    question.working = {fmt::format("{} / ({}) = {} %", fixed(made, 2), terms, digits(question.answer, 3)),
                        "It leaves out excess, solvent, water, workup and yield; the E-factor counts them."};
    return question;
}

} // namespace routeweigh::documents
