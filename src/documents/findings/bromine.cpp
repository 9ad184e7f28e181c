// SPDX-License-Identifier: MIT
// Where the oxidising bromine sits. Silent for routes that have none.
#include "documents/findings/finding.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

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

std::string value_text(const RouteView& route, std::string_view figure_id) {
    return figure_text(route.value(figure_id), 2);
}

void add_handled(const ReportView& view, Statements& statements) {
    const auto handled = with(view, "bromine_handled");
    if (handled.empty()) return;
    const std::size_t without = view.routes.size() - handled.size();
    writing::Text text{
        strong("Bromine in a bottle:"),
        Run(fmt::format(" {} {} ", listed(ids(handled)), verb(handled.size(), "pours", "pour"))),
        number(range_text(handled, "bromine_handled")), Run(" of elemental bromine")};
    text.runs.push_back(Run(without == 0 ? std::string(", and no route does without.")
                                         : fmt::format("; with {} nobody handles it.",
                                                       counted(without, "other route", "other routes"))));
    statements.push_back({"bromine.handled", ids(handled), std::move(text)});
}

void add_carried(const ReportView& view, Statements& statements) {
    const auto carried = with(view, "bromine_carried");
    if (carried.empty()) return;
    statements.push_back(
        {"bromine.carried",
         ids(carried),
         {strong("Moved and not removed:"),
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
    writing::Text text{strong("Bromine in the flask:"), Run(" the most that can be free at one time is "),
                       number(range_text(free, "bromine_ceiling"))};
    if (base.value("bromine_ceiling") > 0.0)
        text.runs.push_back(Run(fmt::format(", {} with {}", value_text(base, "bromine_ceiling"), base.id)));
    text.runs.push_back(Run("."));
    if (!as_high.empty())
        text.runs.push_back(
            Run(fmt::format(" {} {} as high as {} or higher: making it in the flask spares the pouring, not "
                            "the bromine.",
                            listed(ids(as_high)), verb(as_high.size(), "comes", "come"), base.id)));
    statements.push_back({"bromine.ceiling", ids(free), std::move(text)});
}

} // namespace

void find_bromine(const ReportView& view, Statements& statements) {
    add_handled(view, statements);
    add_carried(view, statements);
    add_ceiling(view, statements);
}

} // namespace routeweigh::documents
