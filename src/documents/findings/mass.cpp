// SPDX-License-Identifier: MIT
// Mass put in, in both boundaries. Nothing is called lower that a plausible difference in yield turns round.
#include "documents/findings/finding.hpp"

#include "documents/inputs.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

using writing::number;
using writing::Run;
using writing::strong;

std::vector<const RouteView*> with_verdict(const ReportView& view, MassVerdict verdict) {
    std::vector<const RouteView*> result;
    for (const RouteView* route : view.others())
        if (route->mass == verdict) result.push_back(route);
    return result;
}

/// "40.3 to 53.0 g/g against 53.4".
void add_against(const ReportView& view, const std::vector<const RouteView*>& routes, std::string_view id,
                 writing::Text& text) {
    text.runs.push_back(number(range_text(routes, id)));
    text.runs.push_back(Run(" against "));
    text.runs.push_back(number(figure_text(view.baseline().value(id), 1)));
}

/// Both boundaries, or one where they give the same.
void add_both(const ReportView& view, const std::vector<const RouteView*>& routes, writing::Text& text) {
    add_against(view, routes, pmi_as_written, text);
    if (range_text(routes, pmi_as_written) == range_text(routes, pmi_same_auxiliaries)) {
        text.runs.push_back(Run(", counted either way"));
        return;
    }
    text.runs.push_back(Run(" as written, "));
    add_against(view, routes, pmi_same_auxiliaries, text);
    text.runs.push_back(Run(" with the same auxiliaries"));
}

/// Yields within reach at which routes of the list meet the baseline, nearest first.
std::string break_even_text(const ReportView& view, std::vector<const RouteView*> routes) {
    std::erase_if(routes, [](const RouteView* route) {
        const double even = route->compared->break_even->same_auxiliaries;
        return even > 1.0 || std::abs(even - route->assessment->totals().yield) >= plausible_yield_difference;
    });
    if (routes.empty()) return {};
    std::stable_sort(routes.begin(), routes.end(), [](const auto* a, const auto* b) {
        return a->compared->break_even->same_auxiliaries < b->compared->break_even->same_auxiliaries;
    });
    std::vector<std::string> parts;
    for (const RouteView* route : routes)
        parts.push_back(
            fmt::format("{} at {}", route->id, percent(route->compared->break_even->same_auxiliaries)));
    return fmt::format(" With the same auxiliaries the mass equals that of {}, itself at {}, with {}.",
                       view.baseline().id, percent(view.baseline().assessment->totals().yield),
                       listed(parts));
}

std::string cause_of_difference(const ReportView& view, const std::vector<const RouteView*>& routes) {
    const double base = view.baseline().value(pmi_same_auxiliaries);
    const RouteView* route =
        *std::max_element(routes.begin(), routes.end(), [&](const RouteView* a, const RouteView* b) {
            return std::abs(a->value(pmi_same_auxiliaries) - base) <
                   std::abs(b->value(pmi_same_auxiliaries) - base);
        });
    const std::string why = causes_text(*route->assessment, *view.baseline().assessment, false, 2);
    if (why.empty()) return {};
    return fmt::format(" What makes the difference{}: {}.", routes.size() > 1 ? " with " + route->id : "",
                       why);
}

void add_firm(const ReportView& view, MassVerdict verdict, Statements& statements) {
    const auto routes = with_verdict(view, verdict);
    if (routes.empty()) return;
    const bool lower = verdict == MassVerdict::lower;
    writing::Text text{strong(lower ? "Less mass in both boundaries" : "More mass in both boundaries"),
                       Run(fmt::format(" with {}: ", names(view, routes)))};
    add_both(view, routes, text);
    text.runs.push_back(Run("." + cause_of_difference(view, routes)));
    statements.push_back({Topic::mass, lower ? "mass.lower" : "mass.higher", ids(routes), std::move(text)});
}

void add_depends(const ReportView& view, Statements& statements) {
    const auto routes = with_verdict(view, MassVerdict::depends);
    if (routes.empty()) return;
    writing::Text text{strong("The boundary decides"), Run(fmt::format(" with {}: ", names(view, routes)))};
    add_both(view, routes, text);
    text.runs.push_back(Run("; without any drown-out and rinse "));
    add_against(view, routes, pmi_without_rinse, text);
    text.runs.push_back(
        Run(". What parts the readings is how much the crude is poured into, so no such route is called "
            "lighter or heavier." +
            break_even_text(view, routes)));
    statements.push_back({Topic::mass, "mass.depends", ids(routes), std::move(text)});
}

void add_within_yield(const ReportView& view, Statements& statements) {
    const auto routes = with_verdict(view, MassVerdict::within_yield);
    if (routes.empty()) return;
    writing::Text text{strong("No order of mass can be claimed"),
                       Run(fmt::format(" for {}: ", names(view, routes)))};
    add_both(view, routes, text);
    text.runs.push_back(Run(
        fmt::format(". Yields are assumed, and overall yields within {} points of them turn the order round.",
                    fixed(100.0 * plausible_yield_difference, 0)) +
        break_even_text(view, routes)));
    statements.push_back({Topic::mass, "mass.within_yield", ids(routes), std::move(text)});
}

void add_within_draws(const ReportView& view, Statements& statements) {
    const auto routes = with_verdict(view, MassVerdict::within_draws);
    if (routes.empty()) return;
    writing::Text text{strong("No firm order of mass"),
                       Run(fmt::format(" against {} with {}: ", view.baseline().id, names(view, routes)))};
    add_both(view, routes, text);
    text.runs.push_back(Run(fmt::format(". In one boundary or both, neither is ahead in {} of runs.{}",
                                        percent(sure_share), break_even_text(view, routes))));
    statements.push_back({Topic::mass, "mass.within_draws", ids(routes), std::move(text)});
}

void add_equal(const ReportView& view, Statements& statements) {
    const auto routes = with_verdict(view, MassVerdict::equal);
    if (routes.empty()) return;
    statements.push_back({Topic::mass,
                          "mass.equal",
                          ids(routes),
                          {strong("Equal mass in both boundaries:"),
                           Run(fmt::format(" {} and {}.", listed(ids(routes)), view.baseline().id))}});
}

} // namespace

void find_mass(const ReportView& view, Statements& statements) {
    add_firm(view, MassVerdict::lower, statements);
    add_firm(view, MassVerdict::higher, statements);
    add_depends(view, statements);
    add_within_yield(view, statements);
    add_within_draws(view, statements);
    add_equal(view, statements);
}

} // namespace routeweigh::documents
