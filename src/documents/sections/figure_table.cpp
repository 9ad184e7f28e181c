// SPDX-License-Identifier: MIT
#include "documents/sections/figure_table.hpp"

#include "base/text.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

constexpr std::size_t most_figures = 8;

std::string with_unit(const std::string& name, const std::string& unit) {
    return unit.empty() ? name : name + ", " + unit;
}

/// The unit of a difference: per cent differ by points.
std::string difference_unit(const Figure& figure) {
    return figure.unit == "%" ? "points" : unit_of(figure);
}

bool any_value(const ReportView& view, std::size_t index) {
    return std::any_of(view.routes.begin(), view.routes.end(),
                       [&](const RouteView& route) { return !std::isnan(route.figures[index].value); });
}

/// What is counted and who defined it, figures with the same rule together.
void add_definitions(const std::vector<const Figure*>& figures, writing::Table& table) {
    std::vector<std::pair<std::string, std::vector<std::string>>> groups;
    for (const Figure* entry : figures) {
        const std::string rule = entry->boundary + ". " + capitalised(entry->reference);
        const auto found = std::find_if(groups.begin(), groups.end(),
                                        [&](const auto& group) { return group.first == rule; });
        if (found == groups.end())
            groups.emplace_back(rule, std::vector{entry->name});
        else
            found->second.push_back(entry->name);
    }
    for (const auto& [rule, names] : groups) {
        const std::string whose =
            names.size() > most_figures ? "All of these" : capitalised(join(names, "; "));
        table.remarks.push_back({writing::strong(whose + ":"), writing::Run(" " + rule + ".")});
    }
}

/// Leads from a table to the formulas with the numbers put in.
writing::Text working_links(const ReportView& view) {
    writing::Text text{writing::strong("Workings:")};
    for (const RouteView& route : view.routes) {
        text.runs.push_back(writing::Run(&route == &view.routes.front() ? " " : ", "));
        text.runs.push_back(writing::link(route.id, route.working_anchor()));
    }
    return text;
}

} // namespace

writing::Table figure_table(const ReportView& view, FigureGroup group, std::vector<std::string>& silent) {
    writing::Table table;
    table.caption = std::string(words(group));
    table.columns = {{.heading = "figure"}};
    for (const RouteView& route : view.routes)
        table.columns.push_back(route.column());
    std::vector<const Figure*> shown;
    const std::vector<Figure>& list = view.baseline().figures;
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (list[i].group != group) continue;
        if (!any_value(view, i)) {
            silent.push_back(fmt::format("{} ({})", list[i].name, list[i].note));
            continue;
        }
        shown.push_back(&list[i]);
        std::vector<writing::Cell> values{with_unit(capitalised(list[i].name), unit_of(list[i]))};
        std::vector<writing::Cell> differences{
            with_unit("against " + view.baseline().id, difference_unit(list[i]))};
        bool differs = false;
        for (const RouteView& route : view.routes) {
            values.push_back(figure_cell(route.figures[i]));
            const double difference = route.figures[i].value - list[i].value;
            differs = differs || std::abs(difference) > 1e-9 * std::abs(list[i].value);
            differences.push_back(
                route.baseline || std::isnan(difference)
                    ? writing::Cell("")
                    : writing::Cell(difference_text(route.figures[i].value, list[i].value, list[i].decimals),
                                    difference));
        }
        table.rows.push_back(writing::Row(std::move(values)));
        if (differs) table.rows.push_back(writing::Row(std::move(differences), writing::RowKind::detail));
    }
    add_definitions(shown, table);
    table.remarks.push_back(working_links(view));
    return table;
}

} // namespace routeweigh::documents
