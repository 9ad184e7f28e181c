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
        if (route.route().status != "published amounts") unproved.push_back(&route);
        if (route.assessment->yield_assumed()) assumed.push_back(&route);
    }
    const auto how_many = [&](std::size_t count) {
        return count == view.routes.size()
                   ? (count == 1 ? "the route" : "every route")
                   : counted(count, "route", "routes") + fmt::format(" of {}", view.routes.size());
    };
    if (!unproved.empty())
        statements.push_back(
            {"standing.status",
             ids(unproved),
             {strong("How firm the ground is:"),
              Run(fmt::format(
                  " amounts of {} are not published: they were designed from equations or are bare "
                  "stoichiometry. Run them before you rely on them.",
                  how_many(unproved.size())))}});
    if (!assumed.empty())
        statements.push_back(
            {"standing.yield",
             ids(assumed),
             {strong("Yields are assumed"),
              Run(fmt::format(" for {} ({}). Measured yields may reorder everything that is per gram.",
                              how_many(assumed.size()), range_text(assumed, "yield")))}});
}

} // namespace routeweigh::documents
