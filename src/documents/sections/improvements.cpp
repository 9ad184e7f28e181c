// SPDX-License-Identifier: MIT
#include "documents/sections/improvements.hpp"

#include "documents/improvement_words.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

constexpr std::size_t of_each = 2; // rows of a route among others
constexpr std::size_t of_one = 6;  // rows of a route alone

std::vector<writing::Cell> cells_of(const Improvements& improvements, std::size_t rank) {
    const Improvement& entry = improvements.ranked[rank];
    std::vector<writing::Cell> cells{capitalised(entry.candidate.what)};
    for (writing::Cell& cell : effect_cells(improvements.figure, entry))
        cells.push_back(std::move(cell));
    cells.emplace_back(added_text(entry));
    return cells;
}

writing::Table ranking(const ReportView& view, const std::vector<Improvements>& improvements) {
    const FigurePick& figure = improvements.front().figure;
    writing::Table table;
    table.caption =
        fmt::format("Changes that would do most for the {}; {}", in_sentence(figure.name()), untested);
    table.columns = {{.heading = "change"}};
    for (writing::Column& column : effect_columns(figure))
        table.columns.push_back(std::move(column));
    table.columns.push_back({.heading = "hazard added"});
    for (std::size_t r = 0; r < improvements.size(); ++r) {
        if (!view.single())
            table.rows.push_back(writing::group(
                fmt::format("{}, {} now", view.routes[r].id, value_text(figure, improvements[r].value))));
        const std::size_t shown = std::min(view.single() ? of_one : of_each, improvements[r].ranked.size());
        for (std::size_t i = 0; i < shown; ++i)
            table.rows.push_back(writing::Row(cells_of(improvements[r], i)));
        if (shown == 0) table.rows.push_back({"None of the changes tried improves it"});
    }
    return table;
}

} // namespace

void add_improvements(const ReportView& view, const std::vector<Improvements>& improvements, Blocks& blocks) {
    blocks.push_back(ranking(view, improvements));
    blocks.push_back(writing::Paragraph{{"Each change was put into the route file and everything computed "
                                         "anew. What it might break, what changes do "
                                         "together, other figures, and questions for students: ",
                                         writing::code("routeweigh improve ROUTE"), "."},
                                        true});
}

} // namespace routeweigh::documents
