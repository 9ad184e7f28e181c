// SPDX-License-Identifier: MIT
// Every working and every ledger, folded away until asked for.
#include "chemistry/element.hpp"
#include "documents/explain_hazard.hpp"
#include "documents/number.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"
#include "documents/working.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

writing::Cell grams_cell(double grams) {
    return digits_cell(grams, 4);
}

/// Formula, numbers put in and result of every figure; the sums they use follow once each.
writing::Folded workings(const RouteView& route) {
    writing::Table table;
    table.caption = "Workings of route " + route.id;
    table.columns = {
        {.heading = "figure"}, {.heading = "formula"}, {.heading = "numbers put in"}, {.heading = "result"}};
    std::vector<WorkingSum> sums;
    for (const Metric* metric : all_metrics()) {
        Working working = working_of(*route.assessment, *metric);
        const bool missing = std::isnan(route.assessment->metric(metric->id));
        table.rows.push_back(
            {std::string(metric->name), working.formula, missing ? "" : working.numbers, working.result});
        for (WorkingSum& sum : working.sums) {
            const bool told = std::any_of(sums.begin(), sums.end(), [&](const WorkingSum& entry) {
                return entry.total == sum.total && entry.name == sum.name;
            });
            if (!told && !missing) sums.push_back(std::move(sum));
        }
    }
    writing::KeyValueList totals;
    for (const WorkingSum& sum : sums)
        totals.entries.push_back({sum.name, fmt::format("{} {}: {}", sum.text, sum.unit, sum.rule)});
    Blocks inside{std::move(table), writing::Heading{3, "The totals in these formulas"}, std::move(totals),
                  counted_inputs_table(*route.assessment), net_equation_table(*route.assessment)};
    return {
        {writing::Run("Workings of "), writing::strong(route.id), writing::Run(", " + route.route().title)},
        std::move(inside),
        route.working_anchor()};
}

/// One line a step: made, isolated, lost, unreacted, in both readings of the loss.
writing::Table steps_table(const RouteView& route) {
    writing::Table table;
    table.caption = "Made, isolated, lost, unreacted: grams of the step's product, one run of the step";
    table.columns = {{.heading = "step, reading of the loss"},
                     {.heading = "theory", .align = decimal, .unit = "g"},
                     {.heading = "made", .align = decimal, .unit = "g"},
                     {.heading = "isolated", .align = decimal, .unit = "g"},
                     {.heading = "lost", .align = decimal, .unit = "g"},
                     {.heading = "unreacted", .align = decimal, .unit = "g"}};
    for (std::size_t s = 0; s < route.route().steps.size(); ++s) {
        const Step& step = route.route().steps[s];
        const StepResult& result = route.assessment->evaluation().steps[s];
        const auto grams = [&](double moles) {
            return grams_cell(std::max(0.0, moles) * step.product->molar_mass);
        };
        const auto line = [&](const char* reading, double made) {
            table.rows.push_back({step.id + reading, grams(result.theory), grams(made),
                                  grams(result.isolated), grams(made - result.isolated),
                                  grams(result.theory - made)});
        };
        line(": lost in the work-up", result.made);
        line(": never reacted", result.isolated);
    }
    table.remarks = {
        "A file that states only the isolated yield is read at both ends. Mass figures are the same at both; "
        "streams and waste hazard are not. Unreacted is counted as the product that did not form."};
    return table;
}

writing::Table inputs_table(const RouteView& route, const Ledger& ledger) {
    writing::Table table;
    table.caption = "What enters " + route.id + ", one run";
    table.columns = {{.heading = "material"},
                     {.heading = "substance"},
                     {.heading = "mass", .align = decimal, .unit = "g"},
                     {.heading = "place in the route file"}};
    for (const LedgerRow& row : ledger.rows)
        if (row.side == LedgerRow::Side::in)
            table.rows.push_back({row.place, row.substance->name, grams_cell(row.grams), row.pointer});
    table.rows.push_back(writing::Row({"in", "", grams_cell(ledger.in)}, writing::RowKind::total));
    return table;
}

/// Streams by substance, both readings of the loss beside each other.
writing::Table outputs_table(const RouteView& route, const Ledger& ledger, const Ledger& unreacted) {
    writing::Table table;
    table.caption = "What leaves " + route.id + ", one run";
    table.columns = {{.heading = "stream"},
                     {.heading = "substance"},
                     {.heading = "loss in the work-up", .align = decimal, .unit = "g"},
                     {.heading = "never reacted", .align = decimal, .unit = "g"}};
    const auto in_other = [&](const Ledger& other, const LedgerRow& row) {
        for (const LedgerRow& entry : other.rows)
            if (entry.side == row.side && entry.step == row.step && entry.place == row.place &&
                entry.substance == row.substance)
                return entry.grams;
        return 0.0;
    };
    const auto add = [&](const LedgerRow& row, double nominal, double other) {
        if (std::max(nominal, other) < 1e-6 * ledger.in) return; // rounding of the ledger is no substance
        table.rows.push_back({row.place, row.substance->name, grams_cell(nominal), grams_cell(other)});
    };
    for (const LedgerRow& row : ledger.rows)
        if (row.side != LedgerRow::Side::in) add(row, row.grams, in_other(unreacted, row));
    for (const LedgerRow& row : unreacted.rows)
        if (row.side != LedgerRow::Side::in && in_other(ledger, row) == 0.0) add(row, 0.0, row.grams);
    table.rows.push_back(
        writing::Row({"out", "", grams_cell(ledger.product + ledger.recovered + ledger.streams),
                      grams_cell(unreacted.product + unreacted.recovered + unreacted.streams)},
                     writing::RowKind::total));
    return table;
}

writing::Table elements_table(const Ledger& ledger) {
    writing::Table table;
    table.caption = "Every element, in and out";
    table.columns = {{.heading = "element"},
                     {.heading = "in", .align = decimal, .unit = "g"},
                     {.heading = "out", .align = decimal, .unit = "g"}};
    for (const ElementBalance& balance : ledger.elements)
        table.rows.push_back(
            {balance.element > 0 ? std::string(element_symbol(balance.element)) : "a mixture",
             grams_cell(balance.in), grams_cell(balance.out)});
    table.remarks = {
        writing::Text(fmt::format("The largest relative difference, over the whole and every element, is {}.",
                                  digits(ledger.closure_error(), 1)))};
    return table;
}

writing::Table extents_table(const RouteView& route) {
    writing::Table table;
    table.caption = "How far the reactions of " + route.id + " run, one run of each step";
    table.columns = {{.heading = "reaction"},
                     {.heading = "stage"},
                     {.heading = "extent", .align = decimal, .unit = "mmol"}};
    for (std::size_t s = 0; s < route.route().steps.size(); ++s) {
        const auto extents =
            route.assessment->flat().extents(static_cast<int>(s), route.assessment->flat().nominal());
        const std::vector<Stage>& stages = route.route().steps[s].stages;
        for (std::size_t g = 0; g < stages.size(); ++g)
            for (std::size_t r = 0; r < stages[g].reactions.size(); ++r)
                table.rows.push_back({stages[g].reactions[r].equation.text, stages[g].title,
                                      grams_cell(1000.0 * extents[g][r])});
    }
    return table;
}

writing::Folded ledger(const RouteView& route) {
    const Ledger nominal = route.assessment->ledger(), unreacted = route.assessment->ledger(true);
    Blocks inside{steps_table(route), extents_table(route), inputs_table(route, nominal),
                  outputs_table(route, nominal, unreacted), elements_table(nominal)};
    return {{writing::Run("Ledger of "), writing::strong(route.id), writing::Run(", " + route.route().title)},
            std::move(inside),
            route.ledger_anchor()};
}

/// Every cell in one table, a heading for each.
writing::Folded contributors(const RouteView& route) {
    const HazardScheme& scheme = *route.grid.scheme;
    writing::Table all;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
        for (std::size_t p = 0; p < place_count; ++p) {
            const HazardPlace place = static_cast<HazardPlace>(p);
            if (route.grid.cell(e, place).contributors.empty()) continue;
            writing::Table cell = contributor_table(route.grid, e, place, 12);
            cell.columns[2].unit.clear(); // each cell has its own, named in its heading
            all.columns = cell.columns;
            all.rows.push_back(writing::group(
                fmt::format("{}: {}", cell.caption, unit_text(scheme.endpoints[e].figure_unit()))));
            for (writing::Row& row : cell.rows) {
                row.kind = writing::RowKind::plain;
                all.rows.push_back(std::move(row));
            }
        }
    all.caption = "Contributors to every hazard figure of " + route.id;
    return {{writing::Run("Hazard of "), writing::strong(route.id),
             writing::Run(" cell by cell: who contributes, by which limit, from which source")},
            {std::move(all)},
            "hazard-" + route.id};
}

} // namespace

void add_workings(const ReportView& view, Blocks& blocks) {
    blocks.push_back(writing::Paragraph{"Every figure of every route with its formula and the numbers put "
                                        "in, each at the precision at which the route file "
                                        "states it; then every gram that enters and leaves. What enters "
                                        "equals product, recovered material and streams, for "
                                        "the whole mass and for every element."});
    for (const RouteView& route : view.routes) {
        blocks.push_back(workings(route));
        blocks.push_back(ledger(route));
        blocks.push_back(contributors(route));
    }
}

} // namespace routeweigh::documents
