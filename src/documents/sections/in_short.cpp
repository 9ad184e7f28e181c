// SPDX-License-Identifier: MIT
// In short: statements made from the figures, what came onto the bench, and one line of verdict a route.
#include "assess/same_auxiliaries.hpp"
#include "documents/bench.hpp"
#include "documents/classified_mixture.hpp"
#include "documents/findings/finding.hpp"
#include "documents/number.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace routeweigh::documents {
namespace {

/// The yield goes up by the last step alone, for the inputs of the others would change with theirs.
writing::Cell even_cell(const RouteView& route) {
    if (!route.compared->break_even) return {};
    const double even = route.compared->break_even->same_auxiliaries;
    writing::Cell cell(even > 1.0 ? "> 100" : fixed(100.0 * even, 0), 100.0 * even);
    const Assessment& assessment = *route.assessment;
    const StepResult& last =
        assessment.evaluation().steps[static_cast<std::size_t>(assessment.flat().final_step())];
    const double last_yield = last.isolated / last.theory * even / assessment.totals().yield;
    if (even <= 1.0 && last_yield > 1.0)
        cell.note = "out of reach: the last step alone would have to give more than 100 %";
    return cell;
}

/// How many cells of endpoint and place are lower and how many higher than with the baseline.
std::pair<writing::Cell, writing::Cell> hazard_cells(const RouteView& route) {
    if (!route.compared->hazard) return {};
    double lower = 0, higher = 0;
    for (const HazardPairCell& cell : route.compared->hazard->cells) {
        lower += cell.by_value == HazardOrder::less ? 1 : 0;
        higher += cell.by_value == HazardOrder::more ? 1 : 0;
    }
    return {{fixed(lower, 0), lower}, {fixed(higher, 0), higher}};
}

writing::Table verdicts(const ReportView& view) {
    writing::Table table;
    table.caption = "Every route in one line, against " + view.baseline().id;
    table.columns = {{.heading = "route"},
                     {.heading = "atom economy", .align = decimal, .unit = "%"},
                     {.heading = "put in, as written", .align = decimal, .unit = "g/g"},
                     {.heading = "same auxiliaries", .align = decimal, .unit = "g/g"},
                     {.heading = "equal at a yield of", .align = decimal, .unit = "%"},
                     {.heading = "mass"},
                     {.heading = "hazard cells lower", .align = decimal},
                     {.heading = "higher", .align = decimal}};
    for (const RouteView& route : view.routes) {
        std::vector<writing::Cell> cells{route.head(), figure_cell(figure(route.figures, "atom_economy")),
                                         figure_cell(figure(route.figures, "process_mass_intensity")),
                                         number_cell(route.value(same_auxiliaries_id), 1), even_cell(route)};
        cells.emplace_back(route.mass ? std::string(words(*route.mass)) : std::string("baseline"));
        auto [lower, higher] = hazard_cells(route);
        cells.push_back(std::move(lower));
        cells.push_back(std::move(higher));
        table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
    }
    const auto some = [&](MassVerdict verdict) {
        return std::any_of(view.routes.begin(), view.routes.end(),
                           [verdict](const RouteView& route) { return route.mass == verdict; });
    };
    std::string remark =
        fmt::format("Equal at: the yield at which the route would take as much mass as {} does at its own "
                    "yield, with the same auxiliaries and its inputs unchanged.",
                    view.baseline().id);
    if (some(MassVerdict::within_yield))
        remark += fmt::format(" Yield may turn it: overall yields within {} points of those assumed give the "
                              "other order.",
                              fixed(100.0 * plausible_yield_difference, 0));
    if (some(MassVerdict::within_draws))
        remark += fmt::format(" Not distinguishable: in one boundary or both neither route is ahead in {} of "
                              "the runs.",
                              percent(sure_share));
    remark += fmt::format(" Hazard cells: of {} cells of endpoint and place.",
                          view.others().front()->compared->hazard->cells.size());
    table.remarks = {writing::Text(remark)};
    return table;
}

/// A bottle and the routes that open it; the other side lacks it.
struct Moved {
    BenchBottle item;
    std::vector<std::string> routes;
};

void add_moved(std::vector<Moved>& list, const BenchBottle& item, const std::string& route) {
    if (item.hazards.empty() && item.undecided.empty() && item.reactants.empty()) return;
    const auto found = std::find_if(list.begin(), list.end(),
                                    [&](const Moved& entry) { return entry.item.material == item.material; });
    if (found == list.end()) {
        list.push_back({item, {route}});
        return;
    }
    found->item.grams = std::max(found->item.grams, item.grams);
    if (found->item.reactants.empty()) found->item.reactants = item.reactants;
    found->routes.push_back(route);
}

std::string brought_by(const BenchBottle& item) {
    std::string words;
    for (const BenchHazard hazard : item.hazards)
        words += (words.empty() ? "" : ", ") + std::string(documents::words(hazard));
    if (!item.statements.empty())
        words += (words.empty() ? "" : " ") + fmt::format("({})", join(item.statements, " "));
    if (words.empty()) words = item.assessed ? "not classified" : "no assessment";
    if (!item.undecided.empty()) words += "; a test decides: " + in_sentence(join(item.undecided, ", "));
    return words;
}

void add_rows(const std::vector<Moved>& list, std::string heading, writing::Table& table) {
    if (list.empty()) return;
    table.rows.push_back(writing::group(std::move(heading)));
    for (const Moved& entry : list) {
        writing::Cell name(entry.item.material->name);
        if (!entry.item.reactants.empty())
            name.note = "holds a reactant: what its making took is in no figure";
        table.rows.push_back({std::move(name), brought_by(entry.item), digits_cell(entry.item.grams),
                              join(entry.routes, ", ")});
    }
}

/// What the bench gains and loses against the baseline, by bottle.
writing::Table bench_table(const ReportView& view) {
    const auto base = bench_of(*view.baseline().assessment, view.baseline().classified.bottles);
    std::vector<Moved> gained, gone;
    for (const RouteView* route : view.others()) {
        const auto bench = bench_of(*route->assessment, route->classified.bottles);
        for (const BenchBottle& item : bench)
            if (find_on_bench(base, item.material) == nullptr) add_moved(gained, item, route->id);
        for (const BenchBottle& item : base)
            if (find_on_bench(bench, item.material) == nullptr) add_moved(gone, item, route->id);
    }
    writing::Table table;
    table.caption = "Bottles that come onto the bench or leave it, against " + view.baseline().id;
    table.columns = {{.heading = "bottle"},
                     {.heading = "hazards of the bottle"},
                     {.heading = "most", .align = decimal, .unit = "g/g"},
                     {.heading = "routes"}};
    add_rows(gained, "New on the bench", table);
    add_rows(gone, "Gone from the bench", table);
    table.remarks = {writing::Text(
        judged_by(view.classification.mixture) +
        " Listed is what is classified so that it needs a cupboard or a form of its own, what a test may put "
        "there, and what holds a reactant; the section on bottles and streams has all others.")};
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
    const Statements statements = find_statements(view);
    for (const Topic topic : {Topic::summary, Topic::equation, Topic::mass, Topic::bromine, Topic::moved,
                              Topic::hazard, Topic::standing}) {
        writing::BulletList list;
        for (const Statement& statement : statements)
            if (statement.topic == topic) list.items.push_back(statement.text);
        if (list.items.empty()) continue;
        blocks.push_back(writing::Heading{3, std::string(words(topic))});
        blocks.push_back(std::move(list));
        if (topic == Topic::mass) blocks.push_back(verdicts(view));
        if (topic == Topic::moved) blocks.push_back(bench_table(view));
    }
}

} // namespace routeweigh::documents
