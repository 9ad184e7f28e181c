// SPDX-License-Identifier: MIT
// Hazard: endpoints by places in decades, the score with its weights and repetitions, orders under any
// weights.
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/sections/figure_table.hpp"
#include "documents/sections/hazard_basis.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

constexpr HazardPlace scored_places[] = {HazardPlace::bottle, HazardPlace::flask, HazardPlace::waste};
/// So many routes share one picture; of more, each place has its own.
constexpr std::size_t most_in_one_grid = 3;

writing::DecadeGrid::Cell grid_cell(const HazardCell& cell) {
    using State = writing::DecadeGrid::State;
    const bool open_end = std::isinf(cell.high);
    if (cell.value > 0.0)
        return {open_end ? State::at_least : State::value, cell.decades, digits(cell.value, 2)};
    if (cell.unassessed > 0.0 || open_end) return {State::unassessed, 0.0, digits(cell.unassessed, 2) + " g"};
    return {State::zero, 0.0, "0"};
}

writing::Figure grid_figure(const ReportView& view, const std::vector<HazardPlace>& places,
                            const std::string& where) {
    const HazardScheme& scheme = *view.baseline().grid.scheme;
    writing::DecadeGrid chart;
    chart.measure = "log10(1 + x / x0)";
    for (const RouteView& route : view.routes)
        for (const HazardPlace place : places) {
            const std::string name(place_ids[index_of(place)]);
            chart.columns.push_back({places.size() == 1 ? route.id : name, route.baseline,
                                     places.size() == 1 ? std::string() : route.id});
        }
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e) {
        writing::DecadeGrid::Row row{
            scheme.endpoints[e].title, unit_text(scheme.endpoints[e].figure_unit()), {}};
        for (const RouteView& route : view.routes)
            for (const HazardPlace place : places)
                row.cells.push_back(grid_cell(route.grid.cell(e, place)));
        chart.rows.push_back(std::move(row));
    }
    return {
        fmt::format("Hazard {}: figures per gram of product, squares by decade. {}", where, view.standing()),
        "The side of a square grows by the same length for every tenfold of the figure above its scale. "
        "Squares of "
        "different rows have different units and are not to be added.",
        chart};
}

void add_grids(const ReportView& view, Blocks& blocks) {
    if (view.routes.size() <= most_in_one_grid) {
        blocks.push_back(
            grid_figure(view, {std::begin(scored_places), std::end(scored_places)}, "by endpoint and place"));
        return;
    }
    blocks.push_back(grid_figure(view, {HazardPlace::bottle}, "in the bottles"));
    blocks.push_back(grid_figure(view, {HazardPlace::flask}, "in the flask, every transient at its ceiling"));
    blocks.push_back(grid_figure(view, {HazardPlace::waste}, "in the waste"));
}

double mean_decades(const HazardGrid& grid, HazardPlace place) {
    double sum = 0.0, weights = 0.0;
    for (std::size_t e = 0; e < grid.scheme->endpoints.size(); ++e) {
        const double weight = weight_of(*grid.scheme, e, place);
        sum += weight * grid.cell(e, place).decades;
        weights += weight;
    }
    return weights > 0.0 ? sum / weights : 0.0;
}

writing::Cell score_cell(const HazardScore& score) {
    const std::string text = fixed(score.value, 2);
    return score.ranked() ? writing::Cell(text, score.value) : writing::at_least(text, score.value);
}

writing::Table score_table(const ReportView& view) {
    const HazardScores& first = view.baseline().assessment->scores();
    writing::Table table;
    table.caption = "Hazard score, repeated with other scales and the second banding";
    table.columns = {{.heading = "route"}, {.heading = "score", .align = decimal}};
    for (const ScoreAtScale& scale : first.scales)
        table.columns.push_back(
            {.heading = fmt::format("x0 \u00D7 {:g}", scale.x0_factor), .align = decimal});
    if (first.second_banding) table.columns.push_back({.heading = "second banding", .align = decimal});
    for (const HazardPlace place : scored_places)
        table.columns.push_back(
            {.heading = fmt::format("of it, {}", place_ids[index_of(place)]), .align = decimal});
    for (const RouteView& route : view.routes) {
        const HazardScores& scores = route.assessment->scores();
        std::vector<writing::Cell> cells{route.head(), score_cell(scores.nominal)};
        for (const ScoreAtScale& scale : scores.scales)
            cells.push_back(score_cell(scale.score));
        if (first.second_banding) cells.push_back(score_cell(*scores.second_banding));
        for (const HazardPlace place : scored_places) {
            const double mean = mean_decades(route.grid, place);
            cells.emplace_back(fixed(mean, 2), mean);
        }
        table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
    }
    table.remarks = {
        "Of it: mean decades at one place; the score is the mean of the three. An open end (>=) means that "
        "nothing bounds the score from above, so the route has no rank by it.",
        writing::Text(std::string(limits_of_score()))};
    return table;
}

/// How the score is made, with its weights and scales.
writing::Paragraph score_words(const ReportView& view) {
    const HazardScheme& scheme = *view.baseline().grid.scheme;
    std::vector<std::string> scales;
    bool equal = true;
    for (const EndpointRule& rule : scheme.endpoints) {
        scales.push_back(fmt::format("{} {:g} {}", rule.title, rule.x0, unit_text(rule.unit)));
        equal = equal && rule.weight == scheme.endpoints.front().weight;
    }
    std::string text = fmt::format("With x the figure per gram of product and x0 a fixed scale, d = log10(1 "
                                   "+ x / x0); the score is the mean "
                                   "of d over {} endpoints and three places",
                                   scheme.endpoints.size());
    text += equal ? fmt::format(", every cell with the weight 1/{}.", 3 * scheme.endpoints.size())
                  : std::string(", weighted as the scheme file says.");
    text += " Scales x0: " + listed(scales) + ". They are never taken from the routes compared.";
    return {std::move(text), true};
}

writing::Table order_table(const ReportView& view) {
    writing::Table table;
    table.caption =
        fmt::format("Order of hazard against {}: cells of endpoint and place", view.baseline().id);
    table.columns = {{.heading = "route"},
                     {.heading = "lower", .align = decimal},
                     {.heading = "equal", .align = decimal},
                     {.heading = "higher", .align = decimal},
                     {.heading = "under any weights"},
                     {.heading = "for any limit within the bands"},
                     {.heading = "under any severity: lower", .align = decimal},
                     {.heading = "crossing", .align = decimal}};
    const auto in_words = [](HazardOrder order) {
        return order == HazardOrder::depends ? std::string("no order") : std::string(words(order));
    };
    for (const RouteView& entry : view.routes) {
        const RouteView* route = &entry;
        if (route->baseline) {
            table.rows.push_back(writing::Row({route->head(), "", "", "", "baseline"}, route->row_kind()));
            continue;
        }
        const HazardComparison& hazard = *route->compared->hazard;
        double lower = 0, equal = 0, higher = 0, severity = 0, crossing = 0;
        for (const HazardPairCell& cell : hazard.cells) {
            lower += cell.by_value == HazardOrder::less ? 1 : 0;
            equal += cell.by_value == HazardOrder::equal ? 1 : 0;
            higher += cell.by_value == HazardOrder::more ? 1 : 0;
            severity += cell.severity.order == HazardOrder::less ? 1 : 0;
            crossing += cell.severity.order == HazardOrder::depends ? 1 : 0;
        }
        const auto count = [](double number) { return writing::Cell(fixed(number, 0), number); };
        table.rows.push_back(
            writing::Row({route->head(), count(lower), count(equal), count(higher), in_words(hazard.by_value),
                          in_words(hazard.by_interval), count(severity), count(crossing)},
                         route->row_kind()));
    }
    table.remarks = {"Under any weights: less only if no cell is higher and one is lower. Within the bands: "
                     "the same limit for the same "
                     "substance in both routes, over the corners of the bands and of unassessed mass. Under "
                     "any severity: the grams at "
                     "each level or worse lie on or below those of the baseline, so no choice of severity "
                     "factors matters; where the two "
                     "curves cross, the factors decide."};
    return table;
}

writing::Paragraph agreement(const ReportView& view) {
    if (const auto tau = view.comparison->banding_agreement())
        return {fmt::format("By the low ends of the score, the two bandings agree on the order of the routes "
                            "with Kendall's "
                            "tau-b = {} (1: the same order, "
                            "\u22121: reversed).",
                            fixed(*tau, 2)),
                false};
    return {"Fewer than four routes, or one banding only: how far the two orders agree is not computed.",
            true};
}

} // namespace

void add_hazard(const ReportView& view, Blocks& blocks) {
    blocks.push_back(writing::Paragraph{"A hazard can sit in the bottle that is handled, in the flask while "
                                        "the step runs, and in the waste. Figures count the "
                                        "mass of every ingredient, never the class of a stream, for else "
                                        "water poured into the waste would improve a route. "
                                        "Air, water and body mass are what would dilute the mass to a limit "
                                        "or a dose; for fire, contact, sensitisation and "
                                        "long-term harm the grams at the serious level count."});
    add_grids(view, blocks);
    blocks.push_back(score_table(view));
    blocks.push_back(score_words(view));
    if (!view.single()) {
        blocks.push_back(agreement(view));
        blocks.push_back(order_table(view));
    }
    blocks.push_back(air_basis_table(view));
    blocks.push_back(basis_table(view));
    std::vector<std::string> silent;
    blocks.push_back(writing::Folded{writing::Text("Every hazard figure by route"),
                                     {figure_table(view, FigureGroup::hazard, silent)}});
    for (writing::Folded& fold : contributor_folds(view))
        blocks.push_back(std::move(fold));
    blocks.push_back(not_judged());
}

} // namespace routeweigh::documents
