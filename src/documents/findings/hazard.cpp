// SPDX-License-Identifier: MIT
// What the hazard figures allow to say: order under any weights, the largest shift of air demand, the score.
#include "documents/findings/finding.hpp"

#include "documents/explain_hazard.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

using writing::number;
using writing::Run;
using writing::strong;

std::vector<const RouteView*> ordered(const ReportView& view, HazardOrder order) {
    std::vector<const RouteView*> routes;
    for (const RouteView* route : view.others())
        if (route->compared->hazard->by_value == order) routes.push_back(route);
    return routes;
}

void add_dominance(const ReportView& view, HazardOrder order, Statements& statements) {
    const auto routes = ordered(view, order);
    if (routes.empty()) return;
    std::vector<const RouteView*> firm;
    for (const RouteView* route : routes)
        if (route->compared->hazard->by_interval == order) firm.push_back(route);
    const bool less = order == HazardOrder::less;
    writing::Text text{
        strong(less ? "Less hazard under any weights:" : "More hazard under any weights:"),
        Run(fmt::format(" {} against {}: no cell of endpoint and place is {}, and one at least is {}.",
                        listed(ids(routes)), view.baseline().id, less ? "higher" : "lower",
                        less ? "lower" : "higher"))};
    text.runs.push_back(
        Run(firm.size() == routes.size()
                ? " It holds for every limit within the bands."
                : " It does not hold for every limit within the bands and for unassessed mass."));
    statements.push_back({less ? "hazard.less" : "hazard.more", ids(routes), std::move(text)});
}

/// Ranges of how many cells are lower and higher, over the routes without an order.
void add_trade(const ReportView& view, Statements& statements) {
    const auto routes = ordered(view, HazardOrder::depends);
    if (routes.empty()) return;
    std::size_t least_lower = 99, most_lower = 0, least_higher = 99, most_higher = 0, cells = 0;
    for (const RouteView* route : routes) {
        std::size_t lower = 0, higher = 0;
        for (const HazardPairCell& cell : route->compared->hazard->cells) {
            lower += cell.by_value == HazardOrder::less ? 1 : 0;
            higher += cell.by_value == HazardOrder::more ? 1 : 0;
        }
        cells = route->compared->hazard->cells.size();
        least_lower = std::min(least_lower, lower);
        most_lower = std::max(most_lower, lower);
        least_higher = std::min(least_higher, higher);
        most_higher = std::max(most_higher, higher);
    }
    const auto span = [](std::size_t low, std::size_t high) {
        return low == high ? std::to_string(low) : fmt::format("{} to {}", low, high);
    };
    statements.push_back(
        {"hazard.trade",
         ids(routes),
         {strong("Hazards are traded, not removed:"),
          Run(fmt::format(" against {}, {} {} lower in {} of {} cells of endpoint and place and higher in "
                          "{}. Which weighs "
                          "more is a judgement, and no order holds under any weights.",
                          view.baseline().id, listed(ids(routes)), verb(routes.size(), "is", "are"),
                          span(least_lower, most_lower), cells, span(least_higher, most_higher)))}});
}

std::string main_contributor(const HazardCell& cell) {
    if (cell.contributors.empty() || cell.value <= 0.0) return {};
    const HazardContributor& first = cell.contributors.front();
    return fmt::format(", {} % of it {}", fixed(100.0 * first.share, 0), first.substance->name);
}

/// The cell that differs by the most decades between the baseline and any route, told with its contributors.
void add_largest_shift(const ReportView& view, Statements& statements) {
    const RouteView& base = view.baseline();
    const RouteView* route = nullptr;
    const HazardPairCell* widest = nullptr;
    double most = 0.0;
    for (const RouteView* other : view.others())
        for (const HazardPairCell& cell : other->compared->hazard->cells) {
            if (cell.place != HazardPlace::bottle) continue;
            const double shift = base.grid.cell(cell.endpoint, cell.place).decades -
                                 other->grid.cell(cell.endpoint, cell.place).decades;
            if (shift <= most) continue;
            most = shift;
            route = other;
            widest = &cell;
        }
    if (route == nullptr || most < 0.3) return; // less than a factor of two
    const EndpointRule& rule = base.grid.scheme->endpoints[widest->endpoint];
    const HazardCell& before = base.grid.cell(widest->endpoint, widest->place);
    const HazardCell& after = route->grid.cell(widest->endpoint, widest->place);
    const std::string unit = unit_text(rule.unit) + " per g";
    statements.push_back(
        {"hazard.largest_fall",
         {route->id},
         {strong("Largest fall in the bottles:"), Run(fmt::format(" {} goes from ", rule.title)),
          number(fmt::format("{} {}", cell_text(before), unit)),
          Run(fmt::format(" ({}{}) to ", base.id, main_contributor(before))),
          number(fmt::format("{} {}", cell_text(after), unit)),
          Run(fmt::format(" ({}{}).", route->id, main_contributor(after)))}});
}

void add_score(const ReportView& view, Statements& statements) {
    std::vector<const RouteView*> all;
    std::vector<std::string> unbounded;
    for (const RouteView& route : view.routes) {
        all.push_back(&route);
        if (!route.assessment->scores().nominal.ranked()) unbounded.push_back(route.id);
    }
    writing::Text text{strong("Hazard score:"), Run(" "), number(range_text(all, "hazard_score")),
                       Run(fmt::format(", {} with {}.", figure_text(view.baseline().value("hazard_score"), 2),
                                       view.baseline().id))};
    if (!unbounded.empty())
        text.runs.push_back(Run(
            fmt::format(" {} no rank by score, because nothing bounds a figure of {} from above: some "
                        "mass is unassessed or falls in a band that is open.",
                        unbounded.size() == all.size()
                            ? std::string("No route has a rank; there is")
                            : fmt::format("{} {}", listed(unbounded), verb(unbounded.size(), "has", "have")),
                        unbounded.size() == 1 ? "it" : "each")));
    statements.push_back({"hazard.score", ids(all), std::move(text)});
}

} // namespace

void find_hazard(const ReportView& view, Statements& statements) {
    add_dominance(view, HazardOrder::less, statements);
    add_dominance(view, HazardOrder::more, statements);
    add_trade(view, statements);
    add_largest_shift(view, statements);
    add_score(view, statements);
}

} // namespace routeweigh::documents
