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

constexpr std::string_view air = "inhalation";
constexpr HazardPlace places[] = {HazardPlace::bottle, HazardPlace::flask, HazardPlace::waste};

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

/// "bromine 89 %" of what rests on one basis.
std::string first_on(const HazardCell& cell, HazardBasis basis) {
    const HazardContributor* most = nullptr;
    for (const HazardContributor& part : cell.contributors)
        if (part.basis == basis && (most == nullptr || part.amount > most->amount)) most = &part;
    if (most == nullptr || most->amount <= 0.0) return {};
    return most->substance->name + " " + percent(most->amount / amount_on(cell, basis));
}

double unassessed_grams(const HazardGrid& grid, HazardPlace place) {
    double most = 0.0;
    for (std::size_t e = 0; e < grid.scheme->endpoints.size(); ++e)
        most = std::max(most, grid.cell(e, place).unassessed);
    return most;
}

/// Of what, heaviest first, at most three by name.
std::string unassessed_names(const HazardGrid& grid) {
    std::map<std::string, double> grams;
    for (std::size_t e = 0; e < grid.scheme->endpoints.size(); ++e)
        for (const HazardPlace place : places)
            for (const HazardContributor& part : grid.cell(e, place).contributors)
                if (part.basis == HazardBasis::unassessed)
                    grams[part.substance->name] = std::max(grams[part.substance->name], part.grams);
    std::vector<std::pair<double, std::string>> heaviest;
    for (const auto& [name, mass] : grams)
        if (mass >= negligible) heaviest.emplace_back(-mass, name);
    std::sort(heaviest.begin(), heaviest.end());
    std::vector<std::string> names;
    for (std::size_t i = 0; i < heaviest.size() && i < 3; ++i)
        names.push_back(heaviest[i].second);
    if (heaviest.size() > 3) names.push_back(fmt::format("{} more", heaviest.size() - 3));
    return listed(names);
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
    table.caption = fmt::format("Main contributors {}", words(place));
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
    table.columns = {
        {.heading = "route"},      {.heading = "on limits", .align = decimal, .unit = unit},
        {.heading = "most of it"}, {.heading = "on bands, at least", .align = decimal, .unit = unit},
        {.heading = "most of it"}, {.heading = "on ceilings, apart", .align = decimal, .unit = unit}};
    for (const RouteView& route : view.routes) {
        const HazardCell& cell = route.grid.cell(endpoint, HazardPlace::bottle);
        table.rows.push_back(
            writing::Row({route.head(), digits_cell(amount_on(cell, HazardBasis::limit)),
                          first_on(cell, HazardBasis::limit), digits_cell(amount_on(cell, HazardBasis::band)),
                          first_on(cell, HazardBasis::band), digits_cell(cell.short_term)},
                         route.row_kind()));
    }
    table.remarks = {
        "A time-weighted exposure limit counts where there is one, else the edge of a published band: a band "
        "spans a factor of ten or is open, so a demand that rests on bands is no more than an order of "
        "magnitude. Ceilings and short-term limits are shown apart and are in no order."};
    return table;
}

writing::Table basis_table(const ReportView& view) {
    const std::size_t endpoint = endpoint_index(*view.baseline().grid.scheme, air);
    writing::Table table;
    table.caption = "What the hazard figures rest on: bands, memory, and mass that nobody has assessed";
    table.columns = {{.heading = "route"}};
    for (const HazardPlace place : places)
        table.columns.push_back({.heading = fmt::format("air on bands, {}", place_ids[index_of(place)]),
                                 .align = decimal,
                                 .unit = "%"});
    table.columns.push_back({.heading = "from memory", .align = decimal, .unit = "%"});
    for (const HazardPlace place : places)
        table.columns.push_back({.heading = fmt::format("unassessed, {}", place_ids[index_of(place)]),
                                 .align = decimal,
                                 .unit = "g/g"});
    table.columns.push_back({.heading = "of"});
    for (const RouteView& route : view.routes) {
        std::vector<writing::Cell> cells{route.head()};
        for (const HazardPlace place : places)
            cells.push_back(share_cell(route.grid.cell(endpoint, place)));
        const double recalled = 100.0 * share_from_memory(route.grid);
        cells.emplace_back(fixed(recalled, 0), recalled);
        for (const HazardPlace place : places) {
            const double grams = unassessed_grams(route.grid, place);
            cells.push_back(grams < negligible ? writing::Cell("0", grams) : digits_cell(grams));
        }
        cells.emplace_back(unassessed_names(route.grid));
        table.rows.push_back(writing::Row(std::move(cells), route.row_kind()));
    }
    table.remarks = {"Air on bands: share of the demand for air that rests on bands. From memory: of all "
                     "decades of the score, the share "
                     "that rests on classifications or limits that were recalled and not read.",
                     "Unassessed mass, at the endpoint where it is most, adds nothing to the low end of a "
                     "figure and the worst of the "
                     "endpoint to its high end. It is never taken for nothing."};
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
