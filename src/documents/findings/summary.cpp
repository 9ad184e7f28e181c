// SPDX-License-Identifier: MIT
// The whole section in two sentences: what holds whatever the boundary and the yields, and what does not.
#include "documents/findings/finding.hpp"

#include "documents/words.hpp"

#include "base/text.hpp"

#include <algorithm>
#include <string_view>

namespace routeweigh::documents {
namespace {

using writing::Run;
using writing::strong;

/// Clauses of one of the two sentences and the routes that they speak of.
struct Clauses {
    std::vector<std::string> words;
    std::vector<const RouteView*> routes;
};

template<class Holds>
void add(const ReportView& view, std::string_view what, Holds holds, Clauses& clauses) {
    std::vector<const RouteView*> routes = view.others();
    std::erase_if(routes, [&](const RouteView* route) { return !holds(*route); });
    if (routes.empty()) return;
    clauses.words.push_back(std::string(what) + " " + names(view, routes));
    for (const RouteView* route : routes)
        if (std::find(clauses.routes.begin(), clauses.routes.end(), route) == clauses.routes.end())
            clauses.routes.push_back(route);
}

void say(std::string_view head, std::string_view kind, const Clauses& clauses, Statements& statements) {
    if (clauses.words.empty()) return;
    statements.push_back({Topic::summary,
                          std::string(kind),
                          ids(clauses.routes),
                          {strong(std::string(head)), Run(" " + join(clauses.words, "; ") + ".")}});
}

} // namespace

void find_summary(const ReportView& view, Statements& statements) {
    const RouteView& base = view.baseline();
    const auto economy = [&](const RouteView& route) {
        return route.value("atom_economy") - base.value("atom_economy");
    };
    const auto hazard = [](HazardOrder order) {
        return [order](const RouteView& route) { return route.compared->hazard->by_interval == order; };
    };
    const auto mass = [](MassVerdict verdict) {
        return [verdict](const RouteView& route) { return route.mass == verdict; };
    };
    Clauses firm, open;
    add(
        view, "a better equation with",
        [&](const RouteView& route) { return economy(route) > economy_points; }, firm);
    add(
        view, "a worse equation with",
        [&](const RouteView& route) { return economy(route) < -economy_points; }, firm);
    if (base.value("bromine_handled") > 0.0)
        add(
            view, "no bottle of bromine with",
            [](const RouteView& route) { return route.value("bromine_handled") == 0.0; }, firm);
    add(view, "less mass put in with", mass(MassVerdict::lower), firm);
    add(view, "more mass put in with", mass(MassVerdict::higher), firm);
    add(view, "less hazard under any weights with", hazard(HazardOrder::less), firm);
    add(view, "more hazard under any weights with", hazard(HazardOrder::more), firm);
    add(
        view, "the order by mass of",
        [](const RouteView& route) {
            return route.mass == MassVerdict::depends || route.mass == MassVerdict::within_yield ||
                   route.mass == MassVerdict::within_draws;
        },
        open);
    add(
        view, "the order by hazard of",
        [](const RouteView& route) {
            const HazardOrder order = route.compared->hazard->by_interval;
            return order != HazardOrder::less && order != HazardOrder::more && order != HazardOrder::equal;
        },
        open);
    say("Firm, against " + base.id + ":", "summary.firm", firm, statements);
    say("Open, against " + base.id + ":", "summary.open", open, statements);
}

} // namespace routeweigh::documents
