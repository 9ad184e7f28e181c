// SPDX-License-Identifier: MIT
// How far the numbers themselves carry: what was never run, which yields are assumed.
#include "documents/findings/finding.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {

void find_standing(const ReportView& view, Statements& statements) {
    using writing::Run;
    using writing::strong;
    std::vector<const RouteView*> unproved, assumed;
    for (const RouteView& route : view.routes) {
        if (!route.route().was_run()) unproved.push_back(&route);
        if (route.assessment->yield_assumed()) assumed.push_back(&route);
    }
    const auto how_many = [&](const std::vector<const RouteView*>& routes) {
        if (routes.size() == view.routes.size()) return std::string("every route");
        return routes.size() > 4 ? counted(routes.size(), "of", "of") + " the " +
                                       counted(view.routes.size(), "route", "routes")
                                 : listed(ids(routes));
    };
    if (!unproved.empty())
        statements.push_back(
            {Topic::standing,
             "standing.status",
             ids(unproved),
             {strong("Amounts never run:"),
              Run(fmt::format(
                  " those of {} were designed from equations or are bare stoichiometry. Try them before "
                  "relying on a difference.",
                  how_many(unproved)))}});
    if (!assumed.empty())
        statements.push_back(
            {Topic::standing,
             "standing.yield",
             ids(assumed),
             {strong("Yields are assumed"),
              Run(fmt::format(" for {}: {}. Measured yields may reorder everything that is per gram.",
                              how_many(assumed), range_text(assumed, "yield")))}});
}

} // namespace routeweigh::documents
