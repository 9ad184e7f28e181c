// SPDX-License-Identifier: MIT
#include "documents/ranks.hpp"

#include "base/text.hpp"
#include "documents/certainty_parts.hpp"
#include "documents/number.hpp"
#include "documents/weighting_view.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

/// Ranks that a bar tells apart: so many greys go from dark to light in order; what comes after is one part.
constexpr std::size_t most_parts = 5;

std::string part_name(std::size_t part, std::size_t parts, std::size_t ranks) {
    return part + 1 < parts || parts == ranks ? fmt::format("rank {}", part + 1)
                                              : fmt::format("rank {} to {}", part + 1, ranks);
}

/// "A3 is first in 93 % of the runs, A1 in 7 %", the likeliest first.
std::string words_of_leaders(const ReportView& view, const FigureOrder& order) {
    std::vector<std::size_t> routes;
    for (std::size_t r = 0; r < order.routes; ++r)
        if (order.share_at_rank(r, 0) > 0.0) routes.push_back(r);
    std::stable_sort(routes.begin(), routes.end(), [&](std::size_t a, std::size_t b) {
        return order.share_at_rank(a, 0) > order.share_at_rank(b, 0);
    });
    constexpr std::size_t most_named = 3;
    std::vector<std::string> words;
    for (std::size_t i = 0; i < std::min(routes.size(), most_named); ++i)
        words.push_back(fmt::format("{}in {}{}", view.routes[routes[i]].id + (i == 0 ? " is first " : " "),
                                    share_words(order.share_at_rank(routes[i], 0)),
                                    i == 0 ? " of the runs" : ""));
    return join(words, ", ") + (routes.size() > most_named ? ", others more rarely." : ".");
}

writing::Figure rank_picture(const ReportView& view, std::size_t figure) {
    const FigureOrder& order = view.certainty->order(figure);
    const std::size_t parts = std::min(order.routes, most_parts);
    writing::StackedBars chart;
    chart.unit = "% of the runs";
    for (std::size_t part = 0; part < parts; ++part)
        chart.series.push_back({part_name(part, parts, order.routes)});
    for (std::size_t r = 0; r < order.routes; ++r) {
        writing::StackedBars::Bar bar{.label = view.routes[r].id,
                                      .values = std::vector<double>(parts),
                                      .baseline = view.routes[r].baseline};
        for (std::size_t rank = 0; rank < order.routes; ++rank)
            bar.values[std::min(rank, parts - 1)] += 100.0 * order.share_at_rank(r, rank);
        chart.bars.push_back(std::move(bar));
    }
    // Not how the files stand: where a yield is assumed there are no ranks unless results took its place.
    return {fmt::format("Ranks by {}: share of the runs", view.certainty->model().heads().list[figure].name),
            words_of_leaders(view, order), chart};
}

writing::Table rank_table(const ReportView& view, std::size_t figure) {
    const FigureOrder& order = view.certainty->order(figure);
    writing::Table table;
    table.caption =
        fmt::format("Ranks by {}: share of the runs", view.certainty->model().heads().list[figure].name);
    table.columns = {{.heading = "route"}};
    for (std::size_t rank = 0; rank < order.routes; ++rank)
        table.columns.push_back({.heading = std::to_string(rank + 1), .align = decimal, .unit = "%"});
    for (std::size_t r = 0; r < order.routes; ++r) {
        std::vector<writing::Cell> cells{view.routes[r].head()};
        for (std::size_t rank = 0; rank < order.routes; ++rank) {
            const double share = order.share_at_rank(r, rank);
            cells.push_back(share == 0.0 ? writing::Cell("")
                                         : writing::Cell(fixed(100.0 * share, 0), 100.0 * share));
        }
        table.rows.push_back(writing::Row(std::move(cells), view.routes[r].row_kind()));
    }
    return table;
}

} // namespace

RanksBy ranks_by(const ReportView& view, std::size_t figure) {
    const Certainty& certainty = *view.certainty;
    const FigureModel& model = certainty.model();
    bool varies = false, assumed = false, missing = model.heads().list[figure].better == Better::neither;
    for (std::size_t r = 0; r < model.routes(); ++r) {
        assumed = assumed || model.rests_on_assumed_yield(r, figure);
        varies = varies || certainty.figure(r, figure).varies();
        missing = missing || std::isnan(certainty.figure(r, figure).mean) || !model.bounded(r, figure);
    }
    if (missing) return RanksBy::nothing;
    if (assumed) return RanksBy::rests_on_assumed;
    return varies ? RanksBy::runs : RanksBy::nothing;
}

void add_ranks(const ReportView& view, std::size_t figure, std::vector<writing::Block>& blocks) {
    blocks.push_back(rank_picture(view, figure));
    blocks.push_back(writing::Folded{
        writing::Text("The shares of all ranks by " + view.certainty->model().heads().list[figure].name),
        {rank_table(view, figure)}});
}

} // namespace routeweigh::documents
