// SPDX-License-Identifier: MIT
// What is in the flask: where bromine sits, when there is any, and the largest transients of every route.
#include "assess/input_class.hpp"
#include "base/index.hpp"
#include "base/text.hpp"
#include "documents/number.hpp"
#include "documents/sections/figure_table.hpp"
#include "documents/sections/flask_course.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace routeweigh::documents {
namespace {

constexpr std::string_view figures_of_bromine[] = {"bromine_handled", "bromine_carried", "bromine_ceiling"};
constexpr std::size_t most_transients = 4;

bool any_bromine(const ReportView& view) {
    return std::any_of(view.routes.begin(), view.routes.end(), [](const RouteView& route) {
        return std::any_of(std::begin(figures_of_bromine), std::end(figures_of_bromine),
                           [&](std::string_view id) { return route.value(id) > 0.0; });
    });
}

/// What starts a chain limits it as well: a ceiling is no better known than the trace that it stands on.
std::vector<std::string> traces_of(const RouteView& route) {
    std::vector<std::string> lines;
    for (const Step& step : route.route().steps)
        for (const Stage& stage : step.stages)
            for (const Charge& charge : stage.charges)
                if (charge.role->is_trace())
                    lines.push_back(fmt::format("{}: the ceiling rests on the trace of {}, {:g} {} ({}){}.",
                                                route.id, charge.material->name, charge.amount.value,
                                                charge.amount.unit, charge.source,
                                                charge.note.empty() ? "" : ", which " + charge.note));
    return lines;
}

writing::Table bromine_table(const ReportView& view) {
    writing::Table table;
    table.caption = "Oxidising bromine per gram of product, counted as Br2";
    table.columns = {{.heading = "route"},
                     {.heading = "handled in a bottle", .align = decimal, .unit = "g/g"},
                     {.heading = "hidden inside a reagent", .align = decimal, .unit = "g/g"},
                     {.heading = "free in the flask, at most", .align = decimal, .unit = "g/g"}};
    for (const RouteView& route : view.routes) {
        std::vector<writing::Cell> cells{route.head()};
        for (const std::string_view id : figures_of_bromine) {
            cells.push_back(figure_cell(figure(route.figures, id)));
        }
        table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
    }
    for (const std::string_view id : figures_of_bromine) {
        const Figure& entry = figure(view.baseline().figures, id);
        table.remarks.push_back(writing::Text(entry.name + ": " + entry.boundary + "."));
    }
    for (const RouteView& route : view.routes)
        if (route.value("bromine_ceiling") > 0.0)
            for (std::string& line : traces_of(route))
                table.remarks.push_back(writing::Text(std::move(line)));
    return table;
}

struct Ceiling {
    const Substance* substance;
    double grams; ///< per gram of product
    std::string step;
    bool beside_water; ///< see substances_beside_water()
};

/// Of the substances that appear in the flask without being charged, the most there can be at one time.
std::vector<Ceiling> ceilings(const RouteView& route) {
    std::vector<Ceiling> result;
    const Assessment& assessment = *route.assessment;
    const std::set<const Substance*> beside_water = substances_beside_water(assessment.flat());
    for (const GraphSubstance& entry : route.graph.substances) {
        if (entry.role != GraphRole::transient) continue;
        const FlatStep& step = assessment.flat().steps()[at(entry.step)];
        const auto found = std::find(step.substances.begin(), step.substances.end(), entry.substance);
        if (found == step.substances.end()) continue;
        const double grams =
            assessment.evaluation()
                .flask[at(step.first_flask) + static_cast<std::size_t>(found - step.substances.begin())] /
            assessment.evaluation().product;
        if (grams > negligible)
            result.push_back({entry.substance, grams, route.route().steps[at(entry.step)].id,
                              beside_water.contains(entry.substance)});
    }
    std::stable_sort(result.begin(), result.end(),
                     [](const auto& a, const auto& b) { return a.grams > b.grams; });
    return result;
}

std::string statements_of(const Ceiling& ceiling) {
    const Substance& substance = *ceiling.substance;
    if (!substance.assessed) return "unassessed";
    std::vector<std::string> codes;
    const HazardEntry entry = ceiling.beside_water ? entry_in_water(substance) : entry_neat(substance);
    for (const GhsEntry& ghs : entry.ghs())
        if (std::find(codes.begin(), codes.end(), ghs.statement) == codes.end())
            codes.push_back(ghs.statement);
    return codes.empty() ? "not classified" : join(codes, " ");
}

writing::Table transients_table(const ReportView& view) {
    writing::Table table;
    table.caption = "The largest transients: made and used up in the flask, charged by nobody";
    table.columns = {{.heading = "route"},
                     {.heading = "transient"},
                     {.heading = "at most", .align = writing::Align::decimal, .unit = "g/g"},
                     {.heading = "hazard statements"}};
    if (view.several_steps()) table.columns.insert(table.columns.begin() + 2, {.heading = "step"});
    for (const RouteView& route : view.routes) {
        const std::vector<Ceiling> found = ceilings(route);
        for (std::size_t i = 0; i < found.size() && i < most_transients; ++i) {
            std::vector<writing::Cell> cells{i == 0 ? route.head() : writing::Cell(""),
                                             found[i].substance->name};
            if (view.several_steps()) cells.emplace_back(found[i].step);
            cells.push_back(digits_cell(found[i].grams));
            cells.emplace_back(statements_of(found[i]));
            table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
        }
        if (found.empty()) {
            std::vector<writing::Cell> cells{route.head(), "none"};
            table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
        }
    }
    table.remarks = {
        "At most: the greatest amount over all extents that the charges of a stage allow. Adding in portions "
        "does not lower it; how fast it is made and used up decides how much is really there."};
    return table;
}

} // namespace

void add_flask(const ReportView& view, Blocks& blocks) {
    if (any_bromine(view)) {
        blocks.push_back(writing::Paragraph{"Bromine that is made in the flask is poured by nobody, but it "
                                            "is there. Three questions are kept apart: how "
                                            "much is handled as bromine, how much came hidden in a reagent "
                                            "that somebody else made from bromine, and how "
                                            "much can be free in the flask at one time."});
        blocks.push_back(bromine_table(view));
        if (!view.single()) {
            std::vector<std::string> silent;
            blocks.push_back(writing::Folded{
                writing::Text("Bromine by route, with the difference from " + view.baseline().id),
                {figure_table(view, FigureGroup::bromine, silent)}});
        }
    }
    blocks.push_back(transients_table(view));
    add_flask_courses(view, blocks);
}

} // namespace routeweigh::documents
