// SPDX-License-Identifier: MIT
// In short: statements made from the figures, and one line of verdict a route.
#include "documents/findings/finding.hpp"
#include "documents/inputs.hpp"
#include "documents/number.hpp"
#include "documents/sections/sections.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {
namespace {

writing::Cell even_cell(const RouteView& route) {
    if (!route.compared->break_even) return {};
    const double even = route.compared->break_even->same_auxiliaries;
    writing::Cell cell(even > 1.0 ? "> 100" : fixed(100.0 * even, 0), 100.0 * even);
    return cell;
}

std::string hazard_words(const RouteView& route) {
    if (!route.compared->hazard) return "";
    switch (route.compared->hazard->by_value) {
    case HazardOrder::less:
        return "less in every cell";
    case HazardOrder::more:
        return "more in every cell";
    case HazardOrder::equal:
        return "equal";
    default:
        break;
    }
    std::size_t lower = 0, higher = 0;
    for (const HazardPairCell& cell : route.compared->hazard->cells) {
        lower += cell.by_value == HazardOrder::less ? 1 : 0;
        higher += cell.by_value == HazardOrder::more ? 1 : 0;
    }
    return fmt::format("{} cells lower, {} higher", lower, higher);
}

writing::Table verdicts(const ReportView& view) {
    const auto decimal = writing::Align::decimal;
    writing::Table table;
    table.caption = "Every route in one line, against " + view.baseline().id;
    table.columns = {{.heading = "route"},
                     {.heading = "atom economy", .align = decimal, .unit = "%"},
                     {.heading = "mass put in, as written", .align = decimal, .unit = "g/g"},
                     {.heading = "same auxiliaries", .align = decimal, .unit = "g/g"},
                     {.heading = "equal at a yield of", .align = decimal, .unit = "%"},
                     {.heading = "on mass"},
                     {.heading = "on hazard"}};
    for (const RouteView& route : view.routes) {
        std::vector<writing::Cell> cells{
            route.head(), figure_cell(figure(route.figures, "atom_economy")),
            figure_cell(figure(route.figures, "process_mass_intensity")),
            number_cell(route.value("same_auxiliaries_process_mass_intensity"), 1), even_cell(route)};
        cells.emplace_back(route.compared->mass ? std::string(words(*route.compared->mass))
                                                : std::string("baseline"));
        cells.emplace_back(hazard_words(route));
        cells[2].target = route.working_anchor();
        table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
    }
    table.remarks = {
        writing::Text{"Equal at: the yield at which the route would take as much mass as ",
                      writing::Run(view.baseline().id),
                      " does at its own yield, with the same auxiliaries and its inputs unchanged."}};
    return table;
}

} // namespace

void add_in_short(const ReportView& view, Blocks& blocks) {
    if (view.single()) {
        blocks.push_back(
            writing::Paragraph{"There is one route and nothing to set it against. The sections below show "
                               "its figures, where its mass goes, and what its hazards rest on."});
        return;
    }
    writing::BulletList list;
    for (Statement& statement : find_statements(view))
        list.items.push_back(std::move(statement.text));
    blocks.push_back(std::move(list));
    blocks.push_back(verdicts(view));
}

} // namespace routeweigh::documents
