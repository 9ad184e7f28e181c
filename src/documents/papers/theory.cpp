// SPDX-License-Identifier: MIT
#include "documents/number.hpp"
#include "documents/papers/papers.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

/// "2.107 g × 0.48 / 80.91 g/mol = 12.50 mmol" for each bottle that brings the reactant.
std::vector<std::string> sums_of(const Paper& paper, const ReactantSupply& supply) {
    std::vector<std::string> sums;
    for (const bench::Reagent& reagent : paper.step.reagents) {
        const Component* component = reagent.material().component_of(*supply.substance);
        if (component == nullptr || reagent.stage > paper.step.theory.last_stage) continue;
        const double moles = reagent.grams * component->mass_fraction / supply.substance->molar_mass;
        const std::string share =
            reagent.material().is_neat() ? "" : fmt::format(" × {}", digits(component->mass_fraction, 4));
        sums.push_back(fmt::format("{}: {} g{} / {} g/mol = {} mmol", reagent.material().name,
                                   balance_text(reagent.grams), share, fixed(supply.substance->molar_mass, 2),
                                   digits(1000 * moles, 4)));
    }
    return sums;
}

/// "bromine", or "a and b" where they run out together.
std::string limiting_names(const bench::Theory& theory) {
    std::vector<std::string> names;
    for (const ReactantSupply& supply : theory.run_out_first())
        names.push_back(supply.substance->name);
    return listed(names);
}

void add_working(const Paper& paper, Blocks& blocks) {
    const bench::Theory& theory = paper.step.theory;
    const Substance& product = *paper.step.step->product;
    writing::BulletList lines;
    for (const ReactantSupply& supply : theory.supplies)
        for (const std::string& sum : sums_of(paper, supply))
            lines.items.emplace_back(sum);
    if (!theory.supplies.empty()) {
        const ReactantSupply& limiting = theory.limiting();
        if (theory.run_out_first().size() > 1)
            lines.items.emplace_back(
                fmt::format("Run out together: {}; nothing is left of any of them at full conversion",
                            limiting_names(theory)));
        lines.items.emplace_back(fmt::format("Smallest amount over coefficient: {}, {} mmol / {} = {} mmol",
                                             limiting.substance->name, digits(1000 * limiting.moles, 4),
                                             plain_number(limiting.coefficient),
                                             digits(1000 * limiting.runs, 4)));
        if (theory.by_supply)
            lines.items.emplace_back(fmt::format(
                "Theoretical yield: {} mmol × {} × {} g/mol = {} g", digits(1000 * limiting.runs, 4),
                plain_number(theory.coefficient), fixed(product.molar_mass, 2), balance_text(theory.grams)));
    }
    if (!theory.by_supply)
        lines.items.emplace_back(fmt::format(
            "The reactions of the pot, run to the end, give {} mmol of product, {} g; the reactants of the "
            "overall equation alone do not explain it.",
            digits(1000 * theory.moles, 4), balance_text(theory.grams)));
    blocks.push_back(writing::Heading{heading_level(paper) + 1, "Working"});
    blocks.push_back(std::move(lines));
}

} // namespace

std::string runs_text(double runs, Edition edition) {
    constexpr double just_once = 0.005; // prints as "1.0 times"
    if (std::abs(runs - 1) < just_once) return {};
    if (edition == Edition::key) return digits(runs, 2) + " times";
    if (runs < 1) return "less than once";
    return fmt::format("{:.0f} to {:.0f} times", std::floor(runs), std::floor(runs) + 1);
}

void add_theory(const Paper& paper, Blocks& blocks) {
    const bench::Theory& theory = paper.step.theory;
    blocks.push_back(writing::Paragraph{{writing::code(paper.step.step->overall.text)}});
    writing::Table table;
    table.caption = "Which reactant runs out first";
    table.columns = {{.heading = "reactant"},
                     {.heading = "amount", .align = decimal, .unit = "mmol"},
                     {.heading = "coefficient", .align = decimal},
                     {.heading = "amount over coefficient", .align = decimal, .unit = "mmol"}};
    std::vector<ReactantSupply> supplies = theory.supplies;
    // In the order of the equation: sorted by amount the table would give the answer away.
    std::stable_sort(supplies.begin(), supplies.end(), [&](const auto& a, const auto& b) {
        const auto place = [&](const Substance* substance) {
            const auto& parts = paper.step.step->overall.parts;
            return std::find_if(parts.begin(), parts.end(),
                                [&](const auto& part) { return part.substance == substance; }) -
                   parts.begin();
        };
        return place(a.substance) < place(b.substance);
    });
    for (const ReactantSupply& supply : supplies) {
        const auto cell = [&](double moles) {
            return paper.key() ? writing::Cell(digits(1000 * moles, 4), 1000 * moles)
                               : writing::Cell(std::string(blank));
        };
        table.rows.push_back({supply.substance->name, cell(supply.moles),
                              writing::Cell(plain_number(supply.coefficient), supply.coefficient),
                              cell(supply.runs)});
    }
    blocks.push_back(std::move(table));
    const std::string limiting = !paper.key()              ? std::string(blank)
                                 : theory.supplies.empty() ? "none: nothing of the equation is charged"
                                 : theory.run_out_first().size() > 1
                                     ? "none alone: " + limiting_names(theory) + " run out together"
                                     : limiting_names(theory);
    blocks.push_back(
        writing::KeyValueList{{{"Limiting reagent", limiting},
                               {"Theoretical yield",
                                {text_of(theoretical_amount(paper.route(), paper.step), paper.edition), ", ",
                                 text_of(theoretical_mass(paper.route(), paper.step), paper.edition)}}}});
    if (paper.key()) add_working(paper, blocks);
}

writing::MachineTree theory_tree(const Paper& paper) {
    const bench::Theory& theory = paper.step.theory;
    const bool known = paper.key() && !theory.supplies.empty();
    return writing::MachineObject{
        {"limiting_reagent", known ? writing::MachineTree(limiting_names(theory)) : writing::MachineTree()},
        {"theoretical_amount", machine_of(theoretical_amount(paper.route(), paper.step), paper.edition)},
        {"theoretical_yield", machine_of(theoretical_mass(paper.route(), paper.step), paper.edition)},
        {"isolated_mass", machine_of(isolated_mass(paper.route(), paper.step), paper.edition)},
        {"isolated_yield", machine_of(isolated_yield(paper.route(), paper.step), paper.edition)},
        {"isolated_assumed", paper.step.step->isolated.assumed}};
}

void add_results(const Paper& paper, Blocks& blocks) {
    const Substance& product = *paper.step.step->product;
    writing::Table table;
    table.caption = "Results";
    table.columns = {{.heading = "what"}, {.heading = "unit"}, {.heading = "found"}};
    if (paper.key()) table.columns.push_back({.heading = "expected"});
    const auto row = [&](std::string what, std::string unit, writing::Cell expected) {
        table.rows.push_back({std::move(what), std::move(unit), std::string(blank), std::move(expected)});
    };
    row("empty dish or paper", "g", "");
    row("dish with dry product", "g", "");
    row("after drying once more", "g", "the same within the balance");
    row("mass of " + product.name, "g", cell_of(isolated_mass(paper.route(), paper.step), Edition::key));
    writing::Cell yield = cell_of(isolated_yield(paper.route(), paper.step), Edition::key);
    if (paper.step.step->isolated.assumed) yield.note = "assumed in the route file, not measured";
    row("percent yield", "%", yield);
    if (product.phase == Substance::Phase::solid)
        row(product.melting_point ? fmt::format("melting range, from first drop to clear (listed: {} °C)",
                                                plain_number(*product.melting_point))
                                  : "melting range, from first drop to clear",
            "°C", product.melting_point ? "sharp, at or just below the listed point" : "sharp");
    else if (product.boiling_point)
        row(fmt::format("boiling range (listed: {} °C)", plain_number(*product.boiling_point)), "°C", "");
    row("appearance: colour, form", "", "");
    if (!paper.key()) // the fourth column is no part of this edition
        for (writing::Row& one : table.rows)
            one.cells.resize(3);
    blocks.push_back(std::move(table));
}

} // namespace routeweigh::documents
