// SPDX-License-Identifier: MIT
// How sure one may be: intervals, how often a route is ahead, ranks, what the weights and the bands decide.
#include "assess/same_auxiliaries.hpp"
#include "compare/uncertainty/band_flips.hpp"
#include "compare/uncertainty/weightings.hpp"
#include "documents/certainty_parts.hpp"
#include "documents/number.hpp"
#include "documents/ranks.hpp"
#include "documents/sections/sections.hpp"
#include "documents/weighting_view.hpp"
#include "documents/words.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

std::string verdict_words(const ReportView& view, std::size_t route, std::size_t figure) {
    const Certainty& certainty = *view.certainty;
    const std::size_t base = view.baseline_index;
    const FigureOrder& order = certainty.order(figure);
    const bool lower = certainty.model().heads().list[figure].better == Better::lower;
    const double share = order.share_better(route, base), other = order.share_better(base, route);
    switch (certainty.verdict(route, base, figure)) {
    case PairVerdict::exact:
        return share > 0.0   ? (lower ? "lower" : "higher")
               : other > 0.0 ? (lower ? "higher" : "lower")
                             : "equal";
    case PairVerdict::better:
        return fmt::format("{} in {} of runs", lower ? "lower" : "higher", share_words(share));
    case PairVerdict::worse:
        return fmt::format("{} in {} of runs", lower ? "higher" : "lower", share_words(other));
    case PairVerdict::not_distinguishable:
        return "not distinguishable";
    case PairVerdict::rests_on_assumed:
        return certainty.holds_for_plausible_yields(route, base, figure)
                   ? fmt::format("{} at any yields within {} points",
                                 (share > other) == lower ? "lower" : "higher",
                                 fixed(100.0 * plausible_yield_difference, 0))
                   : "not distinguishable: yields are assumed";
    case PairVerdict::no_bound:
        return "no rank";
    case PairVerdict::no_value:
        break;
    }
    return "-";
}

writing::Table verdict_table(const ReportView& view) {
    const Certainty& certainty = *view.certainty;
    const FigureHeads& heads = certainty.model().heads();
    writing::Table table;
    table.caption = fmt::format("Is the difference from {} real?", view.baseline().id);
    table.columns = {{.heading = "route"}};
    for (const std::string_view id : figures_of_verdict)
        table.columns.push_back({.heading = heads.list[heads.index_of(id)].name});
    for (std::size_t r = 0; r < view.routes.size(); ++r) {
        if (view.routes[r].baseline) continue;
        std::vector<writing::Cell> cells{view.routes[r].head()};
        for (const std::string_view id : figures_of_verdict)
            cells.emplace_back(verdict_words(view, r, heads.index_of(id)));
        table.rows.emplace_back(std::move(cells));
    }
    table.remarks = {
        "No rank: nothing bounds the hazard score of one of the two from above.",
        fmt::format(
            "An order is called so from {} of the runs on; below, the two are not distinguishable by "
            "this figure. A run is one bench on each route, and what the two share (a balance, a bottle) "
            "is the same in both; means of many benches part sooner than single benches do.",
            percent(sure_share))};
    const std::size_t last = heads.index_of(pmi_same_auxiliaries);
    bool assumed = false;
    for (std::size_t r = 0; r < view.routes.size(); ++r)
        assumed = assumed || certainty.model().rests_on_assumed_yield(r, last);
    if (assumed)
        table.remarks.emplace_back(fmt::format(
            "Where a figure rests on an assumed yield no share of runs is given, for it would say "
            "more than anybody knows; instead the overall yield of each route is moved by {} points "
            "either way.",
            fixed(100.0 * plausible_yield_difference, 0)));
    return table;
}

writing::Figure interval_picture(const ReportView& view) {
    const Certainty& certainty = *view.certainty;
    const FigureHeads& heads = certainty.model().heads();
    const std::size_t figure = heads.index_of(view.single() ? "process_mass_intensity" : same_auxiliaries_id);
    writing::Intervals chart;
    chart.quantity = view.single() ? "mass put in" : "same auxiliaries";
    chart.unit = "g/g";
    bool assumed = false;
    for (std::size_t r = 0; r < view.routes.size(); ++r) {
        const DrawnOutput& drawn = certainty.figure(r, figure);
        if (std::isnan(drawn.mean)) continue;
        assumed = assumed || certainty.model().rests_on_assumed_yield(r, figure);
        chart.items.push_back(
            {view.routes[r].id, drawn.mean, drawn.low, drawn.high, false, view.routes[r].baseline});
    }
    return {fmt::format("{}, with the interval that holds {} of the draws{}. {}", heads.list[figure].name,
                        coverage_words(certainty), assumed ? ", at the yields that are assumed" : "",
                        view.standing()),
            "The bars are what balances, glassware, bottles and stated yields leave open.", chart};
}

void add_ranks_of_figures_asked(const ReportView& view, Blocks& blocks) {
    const Certainty& certainty = *view.certainty;
    const FigureModel& model = certainty.model();
    std::vector<std::string> resting;
    for (const std::string_view id : figures_of_verdict) {
        const std::size_t f = model.heads().index_of(id);
        const Figure& head = model.heads().list[f];
        switch (ranks_by(view, f)) {
        case RanksBy::runs:
            add_ranks(view, f, blocks);
            break;
        case RanksBy::rests_on_assumed:
            resting.push_back(head.name);
            break;
        case RanksBy::nothing:
            break;
        }
    }
    if (!resting.empty())
        blocks.push_back(writing::Paragraph{
            fmt::format(
                "No share of runs by rank is given for: {}. They rest on assumed yields; results of a "
                "class in place of them would give one.",
                listed(resting)),
            true});
}

writing::Table weighting_table(const ReportView& view) {
    const WeightingView weightings(view);
    const std::string& base = view.baseline().id;
    writing::Table table;
    table.caption = "Hazard score under all weightings of its cells";
    table.columns = {{.heading = "route"},
                     {.heading = "first", .align = decimal, .unit = "% of weightings"},
                     {.heading = "below " + base, .align = decimal, .unit = "% of weightings"},
                     {.heading = "best lead", .align = decimal, .unit = "decades"}};
    for (std::size_t r = 0; r < view.routes.size(); ++r) {
        const double below = 100.0 * weightings.below_baseline[r];
        table.rows.push_back(
            writing::Row({view.routes[r].head(),
                          {fixed(100.0 * weightings.first[r], 1), 100.0 * weightings.first[r]},
                          view.routes[r].baseline ? writing::Cell() : writing::Cell(fixed(below, 2), below),
                          weightings.best_lead[r] > 0.0
                              ? writing::Cell(digits(weightings.best_lead[r], 2), weightings.best_lead[r])
                              : writing::Cell("never first")},
                         view.routes[r].row_kind()));
    }
    table.remarks = {
        fmt::format("Every list of weights of 0 or above that sum to 1 counts as equally likely. First: by "
                    "{} draws, each share within half a point. Below {}: exactly, as the part of the simplex "
                    "that one plane cuts off. Best lead: over the closest rival, at the weighting that suits "
                    "the route best, from a linear programme.",
                    whole(WeightingView::draws), base),
        "By the low ends of the figures, at the yields as written; the score is never used to approve or to "
        "grade."};
    return table;
}

void add_flips(const ReportView& view, Blocks& blocks) {
    const Banding& banding = view.baseline().assessment->rules().first_banding();
    writing::Table table;
    table.caption = "Rows of the banding that may have been remembered wrongly, each taken the other way";
    table.columns = {{.heading = "row"}, {.heading = "band"}, {.heading = "instead"}, {.heading = "turns"}};
    for (const BandFlip& flip : band_flips(*view.comparison)) {
        std::vector<std::string> statements, turned;
        for (const int statement : flip.row->statements)
            if (const std::string code = fmt::format("H{}", statement);
                std::find(statements.begin(), statements.end(), code) == statements.end())
                statements.push_back(code);
        for (const auto& [a, b] : flip.turned)
            turned.push_back(view.routes[a].id + " with " + view.routes[b].id);
        table.rows.push_back(
            {flip.row->endpoint + ": " + listed(statements) +
                 (flip.row->categories.empty() ? "" : ", category " + listed(flip.row->categories)),
             banding.bands[static_cast<std::size_t>(flip.row->band)].letter,
             banding.bands[static_cast<std::size_t>(flip.band)].letter,
             turned.empty() ? std::string("nothing") : join(turned, "; ")});
    }
    if (table.rows.empty()) {
        blocks.push_back(writing::Paragraph{
            "No row of the first banding is marked as uncertain, so none is taken the other way.", true});
        return;
    }
    blocks.push_back(std::move(table));
}

} // namespace

std::string share_words(double share) {
    // Never "100 %" of a sample, and no digit that the number of draws does not bear.
    if (share > 0.995) return "more than 99 %";
    if (share < 0.005) return "less than 1 %";
    return percent(share);
}

WeightingView::WeightingView(const ReportView& view) {
    std::vector<std::vector<double>> decades;
    for (const RouteView& route : view.routes) {
        std::vector<double>& row = decades.emplace_back();
        for (std::size_t e = 0; e < route.grid.scheme->endpoints.size(); ++e)
            for (std::size_t p = 0; p < place_count; ++p)
                if (route.grid.scheme->places[p].scored)
                    row.push_back(route.grid.cell(e, static_cast<HazardPlace>(p)).decades);
    }
    first = shares_of_weightings_first(decades, draws, 1);
    for (std::size_t r = 0; r < decades.size(); ++r) {
        std::vector<double> difference;
        for (std::size_t c = 0; c < decades[r].size(); ++c)
            difference.push_back(decades[r][c] - decades[view.baseline_index][c]);
        below_baseline.push_back(share_of_weightings_below(difference));
        best_lead.push_back(routeweigh::best_lead(decades, r));
    }
}

void add_certainty(const ReportView& view, Blocks& blocks) {
    if (view.certainty->model().inputs().empty())
        blocks.push_back(writing::Paragraph{
            "No route states how exactly its amounts are known, so the figures have no interval. "
            "\"measured_with\" names the balance and the cylinder, \"spread\" says what stands behind a "
            "\"+/-\"."});
    else {
        blocks.push_back(interval_picture(view));
        for (std::size_t r = 0; r < view.routes.size(); ++r)
            blocks.push_back(writing::Folded{
                writing::Text(fmt::format("What varies in the figures of {}", view.routes[r].id)),
                {interval_table(*view.certainty, view, r)}});
    }
    if (view.single()) return;
    blocks.push_back(verdict_table(view));
    add_ranks_of_figures_asked(view, blocks);
    blocks.push_back(weighting_table(view));
    add_flips(view, blocks);
}

} // namespace routeweigh::documents
