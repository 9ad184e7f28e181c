// SPDX-License-Identifier: MIT
// What the equations promise: atom economy, the by-products behind it, and excess written as stoichiometry.
#include "documents/findings/finding.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"
#include "route/overall_equation.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

using writing::number;
using writing::Run;
using writing::strong;

constexpr double visible_points = 0.05;     // percentage points: half the last digit printed
constexpr double gain_worth_saying = 0.005; // of 1: half a point of atom economy

/// The heaviest parts that make up most of a side of the net equation, and its whole mass in g per mol
/// product.
struct Side {
    double grams = 0;
    std::string heaviest;
    bool all_named = true; ///< these are all
};

Side side_of(const std::vector<NetEquation::Part>& parts) {
    Side side;
    std::vector<std::pair<double, std::string>> masses;
    for (const NetEquation::Part& part : parts) {
        const double grams = part.moles * part.substance->molar_mass;
        side.grams += grams;
        masses.emplace_back(grams, part.substance->name);
    }
    std::stable_sort(masses.begin(), masses.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<std::string> names;
    double named = 0.0;
    for (const auto& [grams, name] : masses) {
        if (names.size() == 2 || named > 0.7 * side.grams) break;
        names.push_back(name);
        named += grams;
    }
    side.heaviest = listed(names);
    side.all_named = names.size() == masses.size();
    return side;
}

std::string by_products_text(const RouteView& route) {
    const Side side = side_of(route.assessment->compiled().net().outputs);
    if (side.grams <= 0.0) return "no by-product";
    return fmt::format("{} g ({}{})", digits(side.grams), side.all_named ? "" : "most of it ", side.heaviest);
}

const RouteView* extreme(const std::vector<const RouteView*>& routes, bool highest) {
    return *std::max_element(routes.begin(), routes.end(), [&](const RouteView* a, const RouteView* b) {
        const double x = a->value("atom_economy"), y = b->value("atom_economy");
        return highest ? x < y : x > y;
    });
}

} // namespace

void find_atom_economy(const ReportView& view, Statements& statements) {
    const double base = view.baseline().value("atom_economy");
    std::vector<const RouteView*> higher, lower, equal;
    for (const RouteView* route : view.others()) {
        const double difference = route->value("atom_economy") - base;
        (difference > visible_points    ? higher
         : difference < -visible_points ? lower
                                        : equal)
            .push_back(route);
    }
    const std::string base_text = fmt::format("{}\u00A0% ({})", figure_text(base, 1), view.baseline().id);
    if (!higher.empty()) {
        const RouteView* best = extreme(higher, true);
        statements.push_back(
            {Topic::equation,
             "atom_economy.higher",
             ids(higher),
             {strong("Atom economy rises"), Run(" from "), number(base_text), Run(" to "),
              number(range_text(higher, "atom_economy")),
              Run(fmt::format(" with {}. By-products per mol of product: {} with {}, {} with {}.",
                              names(view, higher), by_products_text(*best), best->id,
                              by_products_text(view.baseline()), view.baseline().id))}});
    }
    if (!lower.empty()) {
        const RouteView* worst = extreme(lower, false);
        const Side inputs = side_of(worst->assessment->compiled().net().inputs);
        const std::string lowest = figure_text(worst->value("atom_economy"), 1) + "\u00A0%";
        writing::Text text{strong("Atom economy falls")};
        if (higher.empty()) text.runs.push_back(Run(fmt::format(" from {}", base_text)));
        text.runs.push_back(Run(lower.size() == 1
                                    ? std::string(" to ")
                                    : fmt::format(" with {}, furthest to ", names(view, lower))));
        text.runs.push_back(number(lowest));
        text.runs.push_back(
            Run(fmt::format(" with {}: its equation takes {} g of reactants per mol of product, most of "
                            "it {}.",
                            worst->id, digits(inputs.grams), inputs.heaviest)));
        statements.push_back({Topic::equation, "atom_economy.lower", ids(lower), std::move(text)});
    }
    if (!equal.empty())
        statements.push_back(
            {Topic::equation,
             "atom_economy.equal",
             ids(equal),
             {strong("Atom economy is the same"),
              Run(fmt::format(" as that of {} with {}: ", view.baseline().id, names(view, equal))),
              number(fixed(base, 1) + " %"), Run(".")}});
}

void find_excess_in_equation(const ReportView& view, Statements& statements) {
    for (const RouteView& route : view.routes)
        for (const Step& step : route.route().steps) {
            const OverallProof proof = prove_overall(step);
            if (proof.best_atom_economy < proof.atom_economy + gain_worth_saying) continue;
            statements.push_back(
                {Topic::equation,
                 "equation.excess",
                 {route.id},
                 {strong(fmt::format("{} states more than its chemistry needs:", route.id)),
                  Run(fmt::format(
                      " the reactions of the step \"{}\" allow an overall equation with an atom economy of "
                      "{} instead of {}; excess is written as stoichiometry.",
                      step.title, percent(proof.best_atom_economy, 1), percent(proof.atom_economy, 1)))}});
        }
}

} // namespace routeweigh::documents
