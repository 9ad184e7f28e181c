// SPDX-License-Identifier: MIT
#include "documents/report_view.hpp"

#include "assess/same_auxiliaries.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace routeweigh::documents {
namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

constexpr std::string_view same_auxiliaries_boundary =
    "drown-out and flask rinse replaced by those of the baseline, scaled by theoretical moles of product; "
    "all else, "
    "the yield too, stays as written";

Figure mass_figure(std::string id, std::string name, std::string unit, double value, int decimals) {
    Figure figure;
    figure.id = std::move(id);
    figure.name = std::move(name);
    figure.unit = std::move(unit);
    figure.group = FigureGroup::intensity;
    figure.better = Better::lower;
    figure.value = figure.low = figure.high = value;
    figure.boundary = same_auxiliaries_boundary;
    figure.reference = "defined by this project";
    figure.decimals = decimals;
    return figure;
}

Figure same_auxiliaries(const Comparison& comparison, std::size_t route) {
    const bool alone = comparison.routes().size() == 1;
    const SameAuxiliaries& same = comparison.against_baseline(route).same_auxiliaries;
    Figure figure = mass_figure(std::string(same_auxiliaries_id), "Process mass intensity, same auxiliaries",
                                "g/g", alone ? unknown : same.process_mass_intensity, 1);
    if (alone) figure.note = "needs a second route to share the auxiliaries with";
    if (!alone && same.inserted)
        figure.note = "the route as written has no drown-out and no flask rinse; they are put in";
    return figure;
}

Figure break_even(const Comparison& comparison, std::size_t route) {
    const auto& even = comparison.against_baseline(route).break_even;
    Figure figure = mass_figure("break_even_yield", "Break-even yield, same auxiliaries", "%",
                                even ? 100.0 * even->same_auxiliaries : unknown, 0);
    figure.better = Better::neither;
    figure.boundary =
        "yield at which the mass intensity with the same auxiliaries equals that of the baseline at its own "
        "yield; inputs fixed";
    if (!even) figure.note = "a route has none against itself";
    if (even && even->same_auxiliaries > 1.0) figure.note = "above 100 %: not to be reached";
    return figure;
}

} // namespace

std::vector<Figure> figures_of(const Comparison& comparison, std::size_t route) {
    std::vector<Figure> figures = comparison.route(route).figures();
    const auto after = std::find_if(figures.begin(), figures.end(),
                                    [](const Figure& entry) { return entry.id == "process_mass_intensity"; });
    figures.insert(after + 1, {same_auxiliaries(comparison, route), break_even(comparison, route)});
    return figures;
}

const Figure& figure(const std::vector<Figure>& figures, std::string_view id) {
    return *std::find_if(figures.begin(), figures.end(),
                         [id](const Figure& entry) { return entry.id == id; });
}

std::string unit_of(const Figure& figure) {
    return unit_text(figure.unit);
}

writing::Cell figure_cell(const Figure& figure) {
    if (std::isnan(figure.value)) return writing::missing(figure.note);
    const std::string text = figure_text(figure.value, figure.decimals);
    if (std::isinf(figure.high)) return writing::at_least(text, figure.value, figure.note);
    writing::Cell cell(text, figure.value);
    cell.note = figure.note;
    return cell;
}

writing::Column RouteView::column(std::string unit) const {
    return {.heading = id,
            .align = writing::Align::decimal,
            .unit = std::move(unit),
            .baseline = baseline,
            .note = standing};
}

writing::Cell RouteView::head() const {
    writing::Cell cell(id);
    cell.note = standing;
    cell.target = source_anchor();
    return cell;
}

writing::RowKind RouteView::row_kind() const {
    return baseline ? writing::RowKind::baseline : writing::RowKind::plain;
}

std::optional<MassVerdict> mass_verdict(const Comparison& compared, const Certainty* drawn,
                                        std::size_t route) {
    const std::optional<MassVerdict> verdict = compared.against_baseline(route).mass;
    if (drawn == nullptr || (verdict != MassVerdict::lower && verdict != MassVerdict::higher)) return verdict;
    for (const std::string_view id : {pmi_as_written, pmi_same_auxiliaries})
        if (drawn->verdict(route, compared.baseline_index(), drawn->model().heads().index_of(id)) ==
            PairVerdict::not_distinguishable)
            return MassVerdict::within_draws;
    return verdict;
}

ReportView::ReportView(const Comparison& compared, const Certainty* drawn)
    : comparison(&compared),
      classification(*compared.baseline().rules().catalogue, compared.baseline().rules().classified_by),
      certainty(drawn), baseline_index(compared.baseline_index()) {
    for (std::size_t i = 0; i < compared.routes().size(); ++i) {
        const Assessment& assessment = compared.route(i);
        routes.push_back({assessment.route().id, &assessment, &compared.against_baseline(i),
                          i == baseline_index, mass_verdict(compared, drawn, i),
                          assessment.route().status + (assessment.yield_assumed() ? "; yield assumed" : ""),
                          figures_of(compared, i), assessment.hazard_grid(),
                          build_reaction_graph(assessment.route()),
                          classify_route(assessment.flat(), assessment.evaluation(), classification)});
    }
}

std::vector<const RouteView*> ReportView::others() const {
    std::vector<const RouteView*> result;
    for (const RouteView& route : routes)
        if (!route.baseline) result.push_back(&route);
    return result;
}

bool ReportView::several_steps() const {
    return std::any_of(routes.begin(), routes.end(),
                       [](const RouteView& route) { return route.route().steps.size() > 1; });
}

bool ReportView::one_boundary() const {
    return std::none_of(routes.begin(), routes.end(),
                        [](const RouteView& route) { return route.assessment->totals().drown_out > 0.0; });
}

std::string ReportView::standing() const {
    std::vector<std::pair<std::string, std::vector<std::string>>> groups;
    std::vector<std::string> assumed;
    for (const RouteView& route : routes) {
        if (route.assessment->yield_assumed()) assumed.push_back(route.id);
        const auto found = std::find_if(groups.begin(), groups.end(), [&](const auto& entry) {
            return entry.first == route.route().status;
        });
        if (found == groups.end())
            groups.emplace_back(route.route().status, std::vector{route.id});
        else
            found->second.push_back(route.id);
    }
    std::stable_sort(groups.begin(), groups.end(),
                     [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
    std::string text;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const bool others = groups.size() > 1 && i + 1 == groups.size() && groups[i].second.size() > 2;
        const std::string whose = groups.size() == 1 ? (single() ? "the route" : "all routes")
                                  : others           ? "the others"
                                                     : listed(groups[i].second);
        text += fmt::format("{}{}: {}", i > 0 ? "; " : "", groups[i].first, whose);
    }
    text = capitalised(text) + ".";
    if (assumed.size() == routes.size())
        text += single() ? " The yield is assumed." : " All yields are assumed.";
    else if (!assumed.empty())
        text += fmt::format(" Yield assumed: {}.", listed(assumed));
    return text;
}

std::string_view words(MassVerdict verdict) {
    switch (verdict) {
    case MassVerdict::lower:
        return "less";
    case MassVerdict::higher:
        return "more";
    case MassVerdict::depends:
        return "boundary decides";
    case MassVerdict::within_yield:
        return "yield may turn it";
    case MassVerdict::within_draws:
        return "not distinguishable";
    case MassVerdict::equal:
        break;
    }
    return "equal";
}

} // namespace routeweigh::documents
