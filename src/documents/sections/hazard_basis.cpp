// SPDX-License-Identifier: MIT
#include "documents/sections/hazard_basis.hpp"

#include "documents/explain_hazard.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace routeweigh::documents {
namespace {

const auto decimal = writing::Align::decimal;
constexpr std::string_view air = "inhalation";
constexpr double negligible = 5e-4; // g per g: prints as nothing

std::size_t endpoint_index(const HazardScheme& scheme, std::string_view id) {
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
        if (scheme.endpoints[e].id == id) return e;
    return 0;
}

double amount_on(const HazardCell& cell, HazardBasis basis) {
    double sum = 0.0;
    for (const HazardContributor& part : cell.contributors)
        if (part.basis == basis) sum += part.amount;
    return sum;
}

writing::Cell share_cell(const HazardCell& cell) {
    if (cell.value <= 0.0) return {"-"};
    return {fixed(100.0 * cell.share_on_bands, 0), 100.0 * cell.share_on_bands};
}

/// The two who contribute most, with their shares.
std::string leaders(const HazardCell& cell) {
    std::vector<std::string> names;
    for (const HazardContributor& part : cell.contributors) {
        if (names.size() == 2 || part.share < 0.1) break;
        names.push_back(fmt::format("{} {} %", part.substance->name, fixed(100.0 * part.share, 0)));
    }
    return listed(names);
}

writing::Folded contributor_fold(const ReportView& view, HazardPlace place) {
    const HazardScheme& scheme = *view.baseline().grid.scheme;
    writing::Table table;
    table.caption = fmt::format("Main contributors, {}", scheme.places[index_of(place)].title);
    table.columns = {{.heading = "route"},
                     {.heading = "endpoint"},
                     {.heading = "per g", .align = decimal},
                     {.heading = "main contributors"},
                     {.heading = "the first rests on"}};
    for (const RouteView& route : view.routes) {
        bool first = true;
        for (std::size_t e = 0; e < scheme.endpoints.size(); ++e) {
            const HazardCell& cell = route.grid.cell(e, place);
            if (cell.value <= 0.0) continue;
            writing::Cell value(digits(cell.value) + " " + unit_text(scheme.endpoints[e].unit), cell.value);
            if (std::isinf(cell.high)) value.mark = writing::Mark::at_least;
            const HazardProvenance& datum = cell.contributors.front().provenance;
            table.rows.push_back(writing::Row({first ? route.head() : writing::Cell(""),
                                               scheme.endpoints[e].title, std::move(value), leaders(cell),
                                               datum.datum + (datum.from_memory ? " (from memory)" : "")},
                                              route.row_kind()));
            first = false;
        }
    }
    return {writing::Text(table.caption), {std::move(table)}};
}

} // namespace

writing::Table air_basis_table(const ReportView& view) {
    const std::size_t endpoint = endpoint_index(*view.baseline().grid.scheme, air);
    const std::string unit = unit_text(view.baseline().grid.scheme->endpoints[endpoint].unit) + "/g";
    writing::Table table;
    table.caption = "Air to the exposure limit, bottles: what rests on limits and what on bands";
    table.columns = {{.heading = "route"},
                     {.heading = "on limits", .align = decimal, .unit = unit},
                     {.heading = "on bands, at least", .align = decimal, .unit = unit},
                     {.heading = "on ceilings, apart", .align = decimal, .unit = unit},
                     {.heading = "share on bands: bottle", .align = decimal, .unit = "%"},
                     {.heading = "flask", .align = decimal, .unit = "%"},
                     {.heading = "waste", .align = decimal, .unit = "%"},
                     {.heading = "from memory", .align = decimal, .unit = "%"}};
    for (const RouteView& route : view.routes) {
        const HazardCell& bottle = route.grid.cell(endpoint, HazardPlace::bottle);
        table.rows.push_back(
            writing::Row({route.head(), digits_cell(amount_on(bottle, HazardBasis::limit)),
                          digits_cell(amount_on(bottle, HazardBasis::band)), digits_cell(bottle.short_term),
                          share_cell(bottle), share_cell(route.grid.cell(endpoint, HazardPlace::flask)),
                          share_cell(route.grid.cell(endpoint, HazardPlace::waste)),
                          writing::Cell(fixed(100.0 * share_from_memory(route.grid), 0),
                                        100.0 * share_from_memory(route.grid))},
                         route.row_kind()));
    }
    table.remarks = {"A time-weighted exposure limit counts where there is one, else the edge of a published "
                     "band: a band spans a factor "
                     "of ten or is open, so a demand that rests on bands is no more than an order of "
                     "magnitude. Ceilings and short-term "
                     "limits are shown apart and are in no order.",
                     "From memory: of all decades of the score, the share that rests on classifications or "
                     "limits that were recalled and "
                     "not read."};
    return table;
}

writing::Table unassessed_table(const ReportView& view) {
    writing::Table table;
    table.caption = "Mass that nobody has assessed, at the endpoint where it is most";
    table.columns = {{.heading = "route"},
                     {.heading = "bottle", .align = decimal, .unit = "g/g"},
                     {.heading = "flask", .align = decimal, .unit = "g/g"},
                     {.heading = "waste", .align = decimal, .unit = "g/g"},
                     {.heading = "of"}};
    for (const RouteView& route : view.routes) {
        std::vector<writing::Cell> cells{route.head()};
        std::map<std::string, double> names;
        for (const HazardPlace place : {HazardPlace::bottle, HazardPlace::flask, HazardPlace::waste}) {
            double most = 0.0;
            for (std::size_t e = 0; e < route.grid.scheme->endpoints.size(); ++e) {
                const HazardCell& cell = route.grid.cell(e, place);
                most = std::max(most, cell.unassessed);
                for (const HazardContributor& part : cell.contributors)
                    if (part.basis == HazardBasis::unassessed)
                        names[part.substance->name] = std::max(names[part.substance->name], part.grams);
            }
            cells.push_back(most < negligible ? writing::Cell("0", most) : digits_cell(most));
        }
        std::vector<std::pair<double, std::string>> heaviest;
        for (const auto& [name, grams] : names)
            if (grams >= negligible) heaviest.emplace_back(-grams, name);
        std::sort(heaviest.begin(), heaviest.end());
        std::vector<std::string> listed_names;
        for (const auto& [grams, name] : heaviest)
            listed_names.push_back(name);
        if (listed_names.size() > 3) {
            const std::size_t more = listed_names.size() - 3;
            listed_names.resize(3);
            listed_names.push_back(fmt::format("{} more", more));
        }
        cells.emplace_back(listed(listed_names));
        table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
    }
    table.remarks = {"Unassessed mass adds nothing to the low end of a figure and the worst of the endpoint "
                     "to its high end. "
                     "It is never taken for nothing."};
    return table;
}

double share_from_memory(const HazardGrid& grid) {
    double all = 0.0, recalled = 0.0;
    for (std::size_t e = 0; e < grid.scheme->endpoints.size(); ++e)
        for (std::size_t p = 0; p < place_count; ++p) {
            if (!grid.scheme->places[p].scored) continue;
            const HazardCell& cell = grid.cell(e, static_cast<HazardPlace>(p));
            all += cell.decades;
            recalled += cell.decades * cell.share_from_memory;
        }
    return all > 0.0 ? recalled / all : 0.0;
}

std::vector<writing::Folded> contributor_folds(const ReportView& view) {
    std::vector<writing::Folded> folds;
    for (const HazardPlace place : {HazardPlace::bottle, HazardPlace::flask, HazardPlace::waste})
        folds.push_back(contributor_fold(view, place));
    return folds;
}

} // namespace routeweigh::documents
