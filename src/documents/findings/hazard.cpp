// SPDX-License-Identifier: MIT
// What the hazard figures allow to say: order under any weights, shifts in the bottles, the score.
#include "documents/findings/finding.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

using writing::number;
using writing::Run;
using writing::strong;

/// Decades by which a cell has to move before a sentence tells of it: a factor of two.
constexpr double decades_worth_saying = 0.3;

std::vector<const RouteView*> ordered(const ReportView& view, HazardOrder order) {
    std::vector<const RouteView*> routes;
    for (const RouteView* route : view.others())
        if (route->compared->hazard->by_value == order) routes.push_back(route);
    return routes;
}

void add_dominance(const ReportView& view, HazardOrder order, Statements& statements) {
    const auto routes = ordered(view, order);
    if (routes.empty()) return;
    const bool firm = std::all_of(routes.begin(), routes.end(), [order](const RouteView* route) {
        return route->compared->hazard->by_interval == order;
    });
    const bool less = order == HazardOrder::less;
    statements.push_back(
        {Topic::hazard,
         less ? "hazard.less" : "hazard.more",
         ids(routes),
         {strong(less ? "Less hazard under any weights" : "More hazard under any weights"),
          Run(fmt::format(
              " with {}: against {} no cell of endpoint and place is {} and at least one is {}. {}",
              names(view, routes), view.baseline().id, less ? "higher" : "lower", less ? "lower" : "higher",
              firm ? "It holds for every limit within the bands."
                   : "It does not hold for every limit within the bands and for all that is "
                     "unassessed."))}});
}

struct CellCount {
    std::size_t lower = 0, higher = 0;
};

CellCount count_cells(const RouteView& route) {
    CellCount count;
    for (const HazardPairCell& cell : route.compared->hazard->cells) {
        count.lower += cell.by_value == HazardOrder::less ? 1 : 0;
        count.higher += cell.by_value == HazardOrder::more ? 1 : 0;
    }
    return count;
}

/// Routes that no weighting-free order joins to the baseline: how many cells are lower, how many higher.
void add_trade(const ReportView& view, Statements& statements) {
    const auto routes = ordered(view, HazardOrder::depends);
    if (routes.empty()) return;
    std::vector<std::size_t> lower, higher;
    for (const RouteView* route : routes) {
        lower.push_back(count_cells(*route).lower);
        higher.push_back(count_cells(*route).higher);
    }
    const auto span = [](const std::vector<std::size_t>& counts) {
        const auto [low, high] = std::minmax_element(counts.begin(), counts.end());
        return *low == *high ? std::to_string(*low) : fmt::format("{} to {}", *low, *high);
    };
    statements.push_back(
        {Topic::hazard,
         "hazard.trade",
         ids(routes),
         {strong("Hazards are traded, not removed:"),
          Run(fmt::format(" compared with {}, {} {} lower in {} of {} cells of endpoint and place and higher "
                          "in {}. Which "
                          "weighs more is a judgement; no order holds under any weights.",
                          view.baseline().id, names(view, routes), verb(routes.size(), "is", "are"),
                          span(lower), routes.front()->compared->hazard->cells.size(), span(higher)))}});
}

std::string first_contributor(const HazardCell& cell) {
    return cell.contributors.empty() || cell.value <= 0.0 ? std::string()
                                                          : ", " + cell.contributors.front().substance->name;
}

/// Of all bottles the cell that moves by the most decades against the baseline, down or up.
void add_shift(const ReportView& view, bool down, Statements& statements) {
    const RouteView& base = view.baseline();
    const RouteView* route = nullptr;
    std::size_t endpoint = 0;
    double most = decades_worth_saying;
    for (const RouteView* other : view.others())
        for (std::size_t e = 0; e < base.grid.scheme->endpoints.size(); ++e) {
            const double rise = other->grid.cell(e, HazardPlace::bottle).decades -
                                base.grid.cell(e, HazardPlace::bottle).decades;
            if ((down ? -rise : rise) <= most) continue;
            most = down ? -rise : rise;
            route = other;
            endpoint = e;
        }
    if (route == nullptr) return;
    const EndpointRule& rule = base.grid.scheme->endpoints[endpoint];
    const HazardCell &before = base.grid.cell(endpoint, HazardPlace::bottle),
                     &after = route->grid.cell(endpoint, HazardPlace::bottle);
    std::vector<const RouteView*> alike; // to nothing, for instance, several routes may fall
    for (const RouteView* other : view.others())
        if (other->grid.cell(endpoint, HazardPlace::bottle).value == after.value) alike.push_back(other);
    statements.push_back({Topic::hazard,
                          down ? "hazard.largest_fall" : "hazard.largest_rise",
                          ids(alike),
                          {strong(down ? "Largest fall in the bottles:" : "Largest rise in the bottles:"),
                           Run(fmt::format(" {}, from ", rule.title)), number(digits(before.value)),
                           Run(fmt::format(" ({}{}) to ", base.id, first_contributor(before))),
                           number(fmt::format("{} {}", digits(after.value), unit_text(rule.figure_unit()))),
                           Run(fmt::format(" ({}{}).", names(view, alike), first_contributor(after)))}});
}

/// m3 of air that the exposure limits alone ask for; bands left out, for they are no more than orders of
/// magnitude.
struct AirDemand {
    double on_limits = 0, share_on_bands = 0;
    std::string first; ///< who contributes most of it, with the share
};

AirDemand air_demand(const RouteView& route) {
    AirDemand demand;
    for (std::size_t e = 0; e < route.grid.scheme->endpoints.size(); ++e) {
        if (route.grid.scheme->endpoints[e].id != "inhalation") continue;
        const HazardCell& cell = route.grid.cell(e, HazardPlace::bottle);
        demand.share_on_bands = cell.share_on_bands;
        const HazardContributor* most = nullptr;
        for (const HazardContributor& part : cell.contributors) {
            if (part.basis != HazardBasis::limit) continue;
            demand.on_limits += part.amount;
            if (most == nullptr || part.amount > most->amount) most = &part;
        }
        if (most != nullptr && demand.on_limits > 0.0)
            demand.first =
                fmt::format("{} {}", percent(most->amount / demand.on_limits), most->substance->name);
    }
    return demand;
}

void add_air(const ReportView& view, Statements& statements) {
    const AirDemand base = air_demand(view.baseline());
    if (base.on_limits <= 0.0) return;
    const RouteView* lowest = nullptr;
    const RouteView* highest = nullptr;
    double least_bands = base.share_on_bands, most_bands = base.share_on_bands;
    for (const RouteView* route : view.others()) {
        const AirDemand demand = air_demand(*route);
        if (lowest == nullptr || demand.on_limits < air_demand(*lowest).on_limits) lowest = route;
        if (highest == nullptr || demand.on_limits > air_demand(*highest).on_limits) highest = route;
        least_bands = std::min(least_bands, demand.share_on_bands);
        most_bands = std::max(most_bands, demand.share_on_bands);
    }
    const auto tell = [](const std::string& id, const AirDemand& demand, writing::Text& text) {
        text.runs.push_back(number(digits(demand.on_limits)));
        text.runs.push_back(
            Run(" with " + id + (demand.first.empty() ? std::string() : " (" + demand.first + ")")));
    };
    writing::Text text{strong("Air that brings the contents of bottles to the exposure limit,"),
                       Run(" in m\u00B3 per g and where there is a limit: ")};
    tell(view.baseline().id, base, text);
    text.runs.push_back(Run(highest == lowest ? ", " : "; the others from "));
    tell(lowest->id, air_demand(*lowest), text);
    if (highest != lowest) {
        text.runs.push_back(Run(" to "));
        tell(highest->id, air_demand(*highest), text);
    }
    text.runs.push_back(Run("."));
    if (most_bands > 0.0)
        text.runs.push_back(Run(fmt::format(" What has no limit is banded, which is no more than an order of "
                                            "magnitude, and makes up {} of the whole.",
                                            percent(least_bands) == percent(most_bands)
                                                ? percent(least_bands)
                                                : percent(least_bands) + " to " + percent(most_bands))));
    statements.push_back({Topic::hazard, "hazard.air", {lowest->id, highest->id}, std::move(text)});
}

void add_score(const ReportView& view, Statements& statements) {
    std::vector<const RouteView*> all, unbounded;
    for (const RouteView& route : view.routes) {
        all.push_back(&route);
        if (!route.assessment->scores().nominal.ranked()) unbounded.push_back(&route);
    }
    writing::Text text{strong("Hazard score:"), Run(unbounded.empty() ? " " : " at least "),
                       number(range_text(all, "hazard_score")),
                       Run(fmt::format(", {} with {}.", figure_text(view.baseline().value("hazard_score"), 2),
                                       view.baseline().id))};
    if (!unbounded.empty()) {
        const std::string whose = unbounded.size() == all.size()
                                      ? "No route has a rank by it"
                                      : fmt::format("{} {} no rank by it", listed(ids(unbounded)),
                                                    verb(unbounded.size(), "has", "have"));
        text.runs.push_back(Run(" " + whose +
                                ": nothing bounds it from above, because some mass is unassessed or falls "
                                "in a band without a lower edge."));
    }
    statements.push_back({Topic::hazard, "hazard.score", ids(all), std::move(text)});
}

} // namespace

void find_hazard(const ReportView& view, Statements& statements) {
    add_dominance(view, HazardOrder::less, statements);
    add_dominance(view, HazardOrder::more, statements);
    add_trade(view, statements);
    add_air(view, statements);
    add_shift(view, true, statements);
    add_shift(view, false, statements);
    add_score(view, statements);
}

} // namespace routeweigh::documents
