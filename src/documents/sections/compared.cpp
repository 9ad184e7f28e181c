// SPDX-License-Identifier: MIT
// What is compared: routes, scale, standing of the numbers, both boundaries, waste of one run.
#include "assess/same_auxiliaries.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

using writing::number;
using writing::strong;

writing::Paragraph opening(const ReportView& view) {
    const Substance& product = view.product();
    writing::Text text;
    if (view.single())
        text.runs = {writing::Run("Route "), strong(view.baseline().id), writing::Run(" to ")};
    else
        text.runs = {writing::Run(capitalised(counted(view.routes.size(), "way", "ways")) + " to ")};
    text.runs.push_back(strong(product.name));
    text.runs.push_back(writing::Run(" (" + product.formula.text + ", "));
    text.runs.push_back(number(fixed(product.molar_mass, 2) + " g/mol"));
    text.runs.push_back(writing::Run(")"));
    if (!view.single()) {
        text.runs.push_back(writing::Run(", each set against the baseline "));
        text.runs.push_back(strong(view.baseline().id));
    }
    text.runs.push_back(
        writing::Run(". Scale is one run of the last step as its route file writes it, with as much "
                     "of the steps before as "
                     "it needs. Where nothing else is said, figures are per gram of isolated product."));
    return {std::move(text), false};
}

/// Waste in grams of a run comes before any figure per gram: a class fills containers with it.
writing::Table routes_table(const ReportView& view) {
    writing::Table table;
    table.caption = "The routes, and what one run leaves behind";
    table.columns = {{.heading = "route"}, {.heading = "method"}};
    if (view.several_steps()) table.columns.push_back({.heading = "steps", .align = writing::Align::right});
    table.columns.push_back({.heading = "product", .align = writing::Align::decimal, .unit = "g"});
    table.columns.push_back({.heading = "yield", .align = writing::Align::decimal, .unit = "%"});
    table.columns.push_back({.heading = "waste of a run", .align = writing::Align::decimal, .unit = "g"});
    table.columns.push_back({.heading = "waste", .align = writing::Align::decimal, .unit = "g/g"});
    for (const RouteView& route : view.routes) {
        std::vector<writing::Cell> cells{route.head(), route.route().title};
        if (view.several_steps()) cells.emplace_back(std::to_string(route.route().steps.size()));
        cells.push_back(figure_cell(figure(route.figures, "isolated_mass")));
        cells.push_back(figure_cell(figure(route.figures, "yield")));
        cells.push_back(figure_cell(figure(route.figures, "waste_per_run")));
        cells.push_back(figure_cell(figure(route.figures, "complete_e_factor")));
        table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
    }
    table.remarks = {
        "Waste: everything that leaves, water counted, reused material not. Of several steps the yield is "
        "that of the longest linear sequence."};
    return table;
}

/// The standing in words; the full sources are a page of their own.
writing::Paragraph standing(const ReportView& view) {
    return {
        {writing::Run(view.standing() +
                      " The letters in the tables repeat this; where each number comes from stands under "),
         writing::link("Sources, assumptions, cautions", "sources"), writing::Run(".")},
        false};
}

writing::BulletList boundaries(const ReportView& view) {
    writing::BulletList list;
    list.items.push_back(
        {strong("As written"),
         " counts everything that is charged, water, quench, washes and recrystallisation with it. "
         "Oxygen taken up from the air counts; material that is fed back does not; cooling water is "
         "kept apart."});
    if (view.single()) return list;
    if (view.one_boundary()) {
        list.items.push_back(
            {strong("Same auxiliaries"),
             " would take drown-out and flask rinse out of every route and put in those of "
             "the baseline. No route here has any, so both boundaries give the same figures."});
        return list;
    }
    const Assessment& base = *view.baseline().assessment;
    writing::Text same{
        strong("Same auxiliaries"),
        " takes drown-out and flask rinse out of every route and puts in those of the baseline"};
    if (base.totals().drown_out > 0.0) {
        same.runs.push_back(writing::Run(" ("));
        same.runs.push_back(number(digits(base.totals().drown_out) + " g"));
        same.runs.push_back(writing::Run(" for "));
        same.runs.push_back(
            number(digits(1000.0 * auxiliaries_of(base.values(), base.flat()).theory) + " mmol"));
        same.runs.push_back(writing::Run(" theoretical yield of its last step)"));
    } else {
        same.runs.push_back(writing::Run(" (it has none, so here they are only taken out)"));
    }
    same.runs.push_back(writing::Run(", scaled by theoretical moles. How much water a crude is poured into "
                                     "is habit more than chemistry, and it can "
                                     "decide the order. Reactants, quench, reaction solvent, washes, "
                                     "recrystallisation and the yield stay. It holds "
                                     "for mass figures only."));
    list.items.push_back(std::move(same));
    std::vector<std::string> inserted;
    for (const RouteView* route : view.others())
        if (route->compared->same_auxiliaries.inserted) inserted.push_back(route->id);
    if (!inserted.empty())
        list.items.push_back(fmt::format("{} {} no such charge as written; there it is put in.",
                                         listed(inserted), verb(inserted.size(), "has", "have")));
    return list;
}

} // namespace

void add_compared(const ReportView& view, Blocks& blocks) {
    blocks.push_back(opening(view));
    blocks.push_back(routes_table(view));
    blocks.push_back(standing(view));
    blocks.push_back(writing::Heading{3, view.single() ? "What is counted" : "Two boundaries, side by side",
                                      "boundaries"});
    blocks.push_back(boundaries(view));
    blocks.push_back(usual_cautions());
}

} // namespace routeweigh::documents
