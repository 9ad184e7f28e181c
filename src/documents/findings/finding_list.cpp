// SPDX-License-Identifier: MIT
#include "documents/findings/finding.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace routeweigh::documents {
namespace {

constexpr std::array finding_list{&find_summary, &find_atom_economy,     &find_excess_in_equation,
                                  &find_mass,    &find_greener_sounding, &find_bromine,
                                  &find_moved,   &find_hazard,           &find_certainty,
                                  &find_standing};

} // namespace

std::span<const Finding> all_findings() {
    return finding_list;
}

Statements find_statements(const ReportView& view) {
    Statements statements;
    if (view.single()) return statements;
    for (const Finding finding : all_findings())
        finding(view, statements);
    return statements;
}

std::vector<std::string> ids(const std::vector<const RouteView*>& routes) {
    std::vector<std::string> result;
    for (const RouteView* route : routes)
        result.push_back(route->id);
    return result;
}

std::string names(const ReportView& view, const std::vector<const RouteView*>& routes) {
    const std::size_t others = view.routes.size() - 1;
    if (routes.size() == others && others > 2) return "all " + counted(others, "other", "others");
    return listed(ids(routes));
}

std::string_view words(Topic topic) {
    switch (topic) {
    case Topic::summary:
        return "At a glance";
    case Topic::equation:
        return "What the equations promise";
    case Topic::mass:
        return "What is put in";
    case Topic::bromine:
        return "Where the bromine is";
    case Topic::moved:
        return "What moved elsewhere";
    case Topic::hazard:
        return "Hazard";
    case Topic::standing:
        break;
    }
    return "How firm the ground is";
}

std::string range_text(const std::vector<const RouteView*>& routes, std::string_view figure_id) {
    const Figure* least = nullptr;
    const Figure* most = nullptr;
    for (const RouteView* route : routes) {
        const Figure& entry = figure(route->figures, figure_id);
        if (std::isnan(entry.value)) continue;
        if (least == nullptr || entry.value < least->value) least = &entry;
        if (most == nullptr || entry.value > most->value) most = &entry;
    }
    if (least == nullptr) return "-";
    const std::string low = figure_text(least->value, least->decimals),
                      high = figure_text(most->value, most->decimals);
    const std::string unit = most->unit.empty() ? "" : " " + unit_text(most->unit);
    return low == high ? low + unit : low + " to " + high + unit;
}

} // namespace routeweigh::documents
