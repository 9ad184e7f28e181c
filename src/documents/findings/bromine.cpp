// SPDX-License-Identifier: MIT
// Where the oxidising bromine sits. Silent for routes that have none.
#include "documents/findings/finding.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

using writing::number;
using writing::Run;
using writing::strong;

std::vector<const RouteView*> with(const ReportView& view, std::string_view figure_id) {
    std::vector<const RouteView*> routes;
    for (const RouteView& route : view.routes)
        if (route.value(figure_id) > 0.0) routes.push_back(&route);
    return routes;
}

std::string bromine_text(const RouteView& route, std::string_view figure_id) {
    return figure_text(route.value(figure_id), 2);
}

void add_handled(const ReportView& view, Statements& statements) {
    const auto handled = with(view, "bromine_handled");
    if (handled.empty()) return;
    const std::size_t without = view.routes.size() - handled.size();
    writing::Text text{
        strong("In a bottle:"),
        Run(fmt::format(" {} {} ", listed(ids(handled)), verb(handled.size(), "pours", "pour"))),
        number(range_text(handled, "bromine_handled")), Run(" of elemental bromine")};
    text.runs.push_back(Run(without == 0   ? std::string(", and no route does without.")
                            : without == 1 ? std::string("; the other route pours none.")
                                           : fmt::format("; the {} pour none.",
                                                         counted(without, "other route", "other routes"))));
    statements.push_back({Topic::bromine, "bromine.handled", ids(handled), std::move(text)});
}

void add_carried(const ReportView& view, Statements& statements) {
    const auto carried = with(view, "bromine_carried");
    if (carried.empty()) return;
    statements.push_back(
        {Topic::bromine,
         "bromine.carried",
         ids(carried),
         {strong("Hidden in a reagent:"),
          Run(fmt::format(" {} {} ", listed(ids(carried)), verb(carried.size(), "carries", "carry"))),
          number(range_text(carried, "bromine_carried")),
          Run(" of oxidising bromine inside a reagent. Somebody else made that reagent from bromine, and no "
              "figure here "
              "counts it.")}});
}

void add_ceiling(const ReportView& view, Statements& statements) {
    const auto free = with(view, "bromine_ceiling");
    if (free.empty()) return;
    const RouteView& base = view.baseline();
    std::vector<const RouteView*> as_high;
    for (const RouteView* route : view.others())
        if (base.value("bromine_ceiling") > 0.0 &&
            route->value("bromine_ceiling") >= 0.95 * base.value("bromine_ceiling"))
            as_high.push_back(route);
    const RouteView* most = *std::max_element(free.begin(), free.end(), [](const auto* a, const auto* b) {
        return a->value("bromine_ceiling") < b->value("bromine_ceiling");
    });
    writing::Text text{strong("In the flask:"), Run(" at most "),
                       number(bromine_text(*most, "bromine_ceiling") + "\u00A0g/g"),
                       Run(fmt::format(" can be free at one time ({})", most->id))};
    if (base.value("bromine_ceiling") > 0.0 && most != &base)
        text.runs.push_back(Run(fmt::format(", {} with {}", bromine_text(base, "bromine_ceiling"), base.id)));
    text.runs.push_back(Run("."));
    if (!as_high.empty())
        text.runs.push_back(
            Run(fmt::format(" {} {} as high as {}: what is spared there is the pouring, not the bromine.",
                            listed(ids(as_high)), verb(as_high.size(), "comes", "come"), base.id)));
    statements.push_back({Topic::bromine, "bromine.ceiling", ids(free), std::move(text)});
}

} // namespace

void find_bromine(const ReportView& view, Statements& statements) {
    add_handled(view, statements);
    add_carried(view, statements);
    add_ceiling(view, statements);
}

} // namespace routeweigh::documents
