// SPDX-License-Identifier: MIT
// Where a route has something that sounds greener than the baseline and yet does not put in less mass, and
// why.
#include "documents/findings/finding.hpp"

#include "documents/inputs.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

using writing::number;
using writing::Run;
using writing::strong;

bool not_less_mass(const RouteView& route) {
    return *route.mass != MassVerdict::lower;
}

bool higher_economy(const RouteView& route, const RouteView& base) {
    return route.value("atom_economy") > base.value("atom_economy") + economy_points;
}

/// What a title would boast of against the baseline.
std::vector<std::string> advantages(const RouteView& route, const RouteView& base) {
    std::vector<std::string> list;
    if (higher_economy(route, base)) list.emplace_back("a higher atom economy");
    if (route.route().steps.size() < base.route().steps.size()) list.emplace_back("fewer steps");
    if (base.value("bromine_handled") > 0.0 && route.value("bromine_handled") == 0.0)
        list.emplace_back("no bottle of bromine");
    if (route.value("solvent_intensity") < 0.8 * base.value("solvent_intensity"))
        list.emplace_back("less solvent");
    if (route.assessment->scores().nominal.high < base.assessment->scores().nominal.low)
        list.emplace_back("a lower hazard score");
    return list;
}

/// A higher atom economy is the promise that most often is taken for the whole.
void add_economy_without_mass(const ReportView& view, Statements& statements) {
    const RouteView& base = view.baseline();
    std::vector<const RouteView*> routes;
    for (const RouteView* route : view.others())
        if (higher_economy(*route, base) && not_less_mass(*route)) routes.push_back(route);
    if (routes.empty()) return;
    const RouteView* best = *std::max_element(routes.begin(), routes.end(), [](const auto* a, const auto* b) {
        return a->value("atom_economy") < b->value("atom_economy");
    });
    const double points = best->value("atom_economy") - base.value("atom_economy");
    const bool one = routes.size() == 1;
    writing::Text text{
        strong("A better equation and no firm saving of mass:"),
        Run(fmt::format(" {} leads by {} points of atom economy, yet with the same auxiliaries {} {} ",
                        best->id, fixed(points, 1), one ? "it" : names(view, routes),
                        one ? "takes" : "take")),
        number(range_text(routes, pmi_same_auxiliaries)), Run(" against "),
        number(figure_text(base.value(pmi_same_auxiliaries), 1))};
    if (!view.one_boundary())
        for (const Run& run :
             {Run(", without any drown-out and rinse "), number(range_text(routes, pmi_without_rinse)),
              Run(" against "), number(figure_text(base.value(pmi_without_rinse), 1))})
            text.runs.push_back(run);
    text.runs.push_back(Run("."));
    // What causes a difference is told; which route is the lighter one is left to the yields.
    const bool more = best->value(pmi_same_auxiliaries) > base.value(pmi_same_auxiliaries);
    const std::string why = causes_text(*best->assessment, *base.assessment, false, 2);
    if (!why.empty())
        text.runs.push_back(
            Run(fmt::format(" What {} takes {} of: {}.", best->id, more ? "more" : "less", why)));
    statements.push_back({Topic::mass, "greener_sounding.atom_economy", ids(routes), std::move(text)});
}

/// The heaviest route of all, when it too has something to boast of and no yield brings it back to the
/// baseline.
void add_heaviest(const ReportView& view, Statements& statements) {
    const RouteView* heaviest = &view.baseline();
    for (const RouteView& route : view.routes)
        if (route.value(pmi_as_written) > heaviest->value(pmi_as_written) &&
            route.value(pmi_same_auxiliaries) >= heaviest->value(pmi_same_auxiliaries))
            heaviest = &route;
    if (heaviest->baseline || heaviest->mass != MassVerdict::higher) return;
    const std::vector<std::string> boast = advantages(*heaviest, view.baseline());
    if (boast.empty()) return;
    const bool lowest_economy =
        std::all_of(view.routes.begin(), view.routes.end(), [&](const RouteView& route) {
            return route.value("atom_economy") >= heaviest->value("atom_economy");
        });
    writing::Text text{strong("What sounds greener can be the worst:"),
                       Run(fmt::format(" {} has {}, and on these figures takes the most mass of all routes",
                                       heaviest->id, listed(boast)))};
    if (lowest_economy && view.routes.size() > 2)
        text.runs.push_back(Run(fmt::format(" at the lowest atom economy ({}\u00A0%)",
                                            figure_text(heaviest->value("atom_economy"), 1))));
    text.runs.push_back(Run("."));
    statements.push_back({Topic::mass, "greener_sounding.heaviest", {heaviest->id}, std::move(text)});
}

} // namespace

void find_greener_sounding(const ReportView& view, Statements& statements) {
    add_economy_without_mass(view, statements);
    add_heaviest(view, statements);
}

} // namespace routeweigh::documents
