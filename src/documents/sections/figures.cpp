// SPDX-License-Identifier: MIT
// Figures by route with the difference from the baseline, group by group, and both boundaries side by side.
#include "base/text.hpp"
#include "documents/number.hpp"
#include "documents/sections/figure_table.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace routeweigh::documents {
namespace {

/// A value and, behind it, how far it lies from that of the baseline.
void add_pair(std::vector<writing::Cell>& cells, const RouteView& route, const RouteView& base,
              std::string_view id) {
    const Figure& ours = figure(route.figures, id);
    cells.push_back(figure_cell(ours));
    if (route.baseline)
        cells.emplace_back("");
    else
        cells.emplace_back(difference_text(ours.value, base.value(id), ours.decimals),
                           ours.value - base.value(id));
}

writing::Table both_boundaries(const ReportView& view) {
    writing::Table table;
    table.caption = "Process mass intensity in both boundaries and without drown-out and rinse, with the "
                    "difference from " +
                    view.baseline().id;
    const std::string against = "difference";
    table.columns = {{.heading = "route"},
                     {.heading = "as written", .align = decimal, .unit = "g/g"},
                     {.heading = against, .align = decimal},
                     {.heading = "same auxiliaries", .align = decimal, .unit = "g/g"},
                     {.heading = against, .align = decimal},
                     {.heading = "without", .align = decimal, .unit = "g/g"},
                     {.heading = against, .align = decimal}};
    for (const RouteView& route : view.routes) {
        std::vector<writing::Cell> cells{route.head()};
        for (const std::string_view id : {pmi_as_written, pmi_same_auxiliaries, pmi_without_rinse})
            add_pair(cells, route, view.baseline(), id);
        table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
    }
    return table;
}

/// Intensity goes as one over the yield, inputs fixed.
double at_yield(const RouteView& route, double intensity, double yield) {
    return intensity * route.assessment->totals().yield / yield;
}

writing::Figure yield_intervals(const ReportView& view) {
    writing::Intervals chart;
    chart.quantity = "same auxiliaries";
    chart.unit = "g/g";
    for (const RouteView& route : view.routes) {
        const double yield = route.assessment->totals().yield, value = route.value(pmi_same_auxiliaries);
        const auto [least, most] = plausible_yields(yield);
        chart.items.push_back({fmt::format("{} at {}", route.id, percent(yield)), value,
                               at_yield(route, value, most), at_yield(route, value, least), false,
                               route.baseline});
    }
    return {
        fmt::format(
            "Process mass intensity with the same auxiliaries; the bars show what {} points of overall yield "
            "more or less would do. {}",
            fixed(100.0 * plausible_yield_difference, 0), view.standing()),
        std::any_of(view.routes.begin(), view.routes.end(),
                    [](const RouteView& route) { return route.assessment->yield_assumed(); })
            ? "Routes whose bars overlap cannot be put in order while their yields are assumed."
            : "Where bars overlap, that much yield would turn the order.",
        chart};
}

/// The routes nearest to the baseline, which are those whose order a yield decides.
writing::Figure break_even_curve(const ReportView& view) {
    std::vector<const RouteView*> nearest = view.others();
    const double base = view.baseline().value(pmi_same_auxiliaries);
    std::stable_sort(nearest.begin(), nearest.end(), [&](const auto* a, const auto* b) {
        return std::abs(a->value(pmi_same_auxiliaries) - base) <
               std::abs(b->value(pmi_same_auxiliaries) - base);
    });
    if (nearest.size() > 3) nearest.resize(3);
    writing::Curve chart;
    chart.x = {"isolated yield", "%"};
    chart.y = {"mass put in, same auxiliaries", "g/g"};
    const double base_yield = view.baseline().assessment->totals().yield;
    double low = base_yield, high = base_yield;
    for (const RouteView* route : nearest) {
        const double even = route->compared->break_even->same_auxiliaries;
        low = std::min({low, route->assessment->totals().yield, even});
        high = std::max({high, route->assessment->totals().yield, std::min(even, 1.0)});
    }
    // Whole steps of five points, so that the numbers beside the picture are round.
    low = std::max(0.05, std::floor(20.0 * low - 1.0) / 20.0);
    high = std::min(1.0, std::ceil(20.0 * high + 1.0) / 20.0);
    const int count = static_cast<int>(std::lround((high - low) * 40.0));
    // All lines at the same yields: the numbers of the picture are then one table with a row for each.
    writing::Curve::Line level{fmt::format("{} at {}", view.baseline().id, percent(base_yield)), {}, true};
    for (int i = 0; i <= count; ++i)
        level.points.push_back({100.0 * (low + (high - low) * i / count), base});
    chart.lines.push_back(std::move(level));
    std::vector<std::string> evens;
    for (const RouteView* route : nearest) {
        writing::Curve::Line line{route->id, {}};
        for (int i = 0; i <= count; ++i) {
            const double yield = low + (high - low) * i / count;
            line.points.push_back(
                {100.0 * yield, at_yield(*route, route->value(pmi_same_auxiliaries), yield)});
        }
        chart.lines.push_back(std::move(line));
        const double even = route->compared->break_even->same_auxiliaries;
        if (even > 1.0) continue;
        chart.markers.push_back({{100.0 * even, base}, fmt::format("{} at {}", route->id, percent(even))});
        evens.push_back(fmt::format("{} at {}", route->id, percent(even)));
    }
    const std::string where =
        evens.empty()
            ? fmt::format("No line meets that of {} at a yield that can be reached.", view.baseline().id)
            : fmt::format("Equal to {}: {}.", view.baseline().id, listed(evens));
    return {fmt::format(
                "Break-even: the yield at which a route takes as much mass as {} does at its own yield{}. {}",
                view.baseline().id,
                view.others().size() > nearest.size() ? "; the three routes nearest to it" : "",
                view.standing()),
            where, chart};
}

} // namespace

void add_figures(const ReportView& view, Blocks& blocks) {
    if (!view.single()) {
        if (!view.one_boundary()) blocks.push_back(both_boundaries(view));
        blocks.push_back(yield_intervals(view));
        blocks.push_back(break_even_curve(view));
    }
    std::vector<std::string> silent;
    for (const FigureGroup group : {FigureGroup::yield, FigureGroup::equation, FigureGroup::reactants,
                                    FigureGroup::waste, FigureGroup::intensity, FigureGroup::utilities}) {
        writing::Table table = figure_table(view, group, silent);
        if (!table.rows.empty()) blocks.push_back(std::move(table));
    }
    if (!silent.empty())
        blocks.push_back(writing::Paragraph{"No route has a value for: " + join(silent, "; ") + ".", true});
}

} // namespace routeweigh::documents
