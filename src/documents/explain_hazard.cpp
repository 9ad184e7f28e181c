// SPDX-License-Identifier: MIT
#include "documents/explain_hazard.hpp"

#include "documents/number.hpp"
#include "documents/recalled.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace routeweigh::documents {
namespace {

using writing::MachineList;
using writing::MachineObject;

HazardExplanation explain_cell(const HazardGrid& grid, std::size_t endpoint, HazardPlace place) {
    const EndpointRule& rule = grid.scheme->endpoints[endpoint];
    const HazardCell& cell = grid.cell(endpoint, place);
    HazardExplanation result;
    result.formula = fmt::format("sum over substances of grams per gram of product \u00D7 {} per gram",
                                 unit_text(rule.unit));
    result.parts.push_back(contributor_table(grid, endpoint, place, cell.contributors.size()));
    if (!rule.source.empty())
        result.parts.push_back(writing::Paragraph{"Limits: " + rule.source + ".", true});
    result.parts.push_back(writing::Paragraph{
        fmt::format(
            "Score: d = log10(1 + {} / {:g}) = {}; it counts as one of the cells of the hazard score.",
            digits(cell.value), rule.x0, fixed(cell.decades, 2)),
        true});
    MachineList terms;
    for (const HazardContributor& part : cell.contributors)
        terms.emplace_back(MachineObject{{"substance", part.substance->name},
                                         {"grams", part.grams},
                                         {"value", part.amount},
                                         {"high", part.high},
                                         {"short_term", part.short_term},
                                         {"datum", part.provenance.datum},
                                         {"source", part.provenance.source},
                                         {"from_memory", part.provenance.from_memory}});
    result.terms = std::move(terms);
    return result;
}

HazardExplanation explain_score(const Assessment& route, const HazardGrid& grid) {
    const HazardScheme& scheme = *grid.scheme;
    HazardExplanation result;
    result.formula = "sum over endpoints and places of weight \u00D7 d, d = log10(1 + x / x0)";
    writing::Table table;
    table.caption = "The cells of the score";
    table.columns = {{.heading = "endpoint"},
                     {.heading = "place"},
                     {.heading = "x per g", .align = writing::Align::decimal},
                     {.heading = "x0", .align = writing::Align::decimal},
                     {.heading = "unit"},
                     {.heading = "d", .align = writing::Align::decimal},
                     {.heading = "weight", .align = writing::Align::decimal}};
    MachineList terms;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
        for (std::size_t p = 0; p < place_count; ++p) {
            if (!scheme.places[p].scored) continue;
            const HazardPlace place = static_cast<HazardPlace>(p);
            const HazardCell& cell = grid.cell(e, place);
            const EndpointRule& rule = scheme.endpoints[e];
            const double weight = weight_of(scheme, e, place);
            table.rows.push_back({rule.title, std::string(place_ids[p]),
                                  writing::Cell(cell_text(cell), cell.value),
                                  writing::Cell(fmt::format("{:g}", rule.x0), rule.x0), unit_text(rule.unit),
                                  writing::Cell(fixed(cell.decades, 2), cell.decades),
                                  writing::Cell(fixed(weight, 4), weight)});
            terms.emplace_back(MachineObject{{"endpoint", rule.id},
                                             {"place", std::string(place_ids[p])},
                                             {"value", cell.value},
                                             {"x0", rule.x0},
                                             {"decades", cell.decades},
                                             {"weight", weight}});
        }
    const double value = route.scores().nominal.value;
    table.rows.push_back(writing::Row(
        {"hazard score", "", "", "", "", writing::Cell(fixed(value, 2), value), writing::Cell("1", 1.0)},
        writing::RowKind::total));
    result.parts.push_back(std::move(table));
    result.terms = std::move(terms);
    return result;
}

} // namespace

std::string_view words(HazardPlace place) {
    switch (place) {
    case HazardPlace::bottle:
        return "in the bottles";
    case HazardPlace::flask:
        return "in the flask";
    case HazardPlace::waste:
        return "in the waste";
    case HazardPlace::product:
        break;
    }
    return "in the product";
}

std::string cell_text(const HazardCell& cell) {
    return (std::isinf(cell.high) ? ">= " : "") + digits(cell.value);
}

writing::Table contributor_table(const HazardGrid& grid, std::size_t endpoint, HazardPlace place,
                                 std::size_t most) {
    const EndpointRule& rule = grid.scheme->endpoints[endpoint];
    const HazardCell& cell = grid.cell(endpoint, place);
    const std::string unit = unit_text(rule.unit);
    writing::Table table;
    table.caption = fmt::format("{}, {}", capitalised(rule.title), words(place));
    table.columns = {{.heading = "substance"},
                     {.heading = "mass", .align = writing::Align::decimal, .unit = "g/g"},
                     {.heading = "adds", .align = writing::Align::decimal, .unit = unit + " per g"},
                     {.heading = "share", .align = writing::Align::decimal, .unit = "%"},
                     {.heading = "rests on"},
                     {.heading = "source"}};
    for (std::size_t i = 0; i < cell.contributors.size() && i < most; ++i) {
        const HazardContributor& part = cell.contributors[i];
        writing::Cell adds(digits(part.amount), part.amount);
        if (part.high > part.amount)
            adds = std::isinf(part.high)
                       ? writing::at_least(digits(part.amount), part.amount, "no upper bound")
                       : writing::Cell(digits(part.amount) + " to " + digits(part.high), part.amount);
        if (part.basis == HazardBasis::short_term_limit)
            adds.note = fmt::format("{} {} against a ceiling or short-term limit, in no sum",
                                    digits(part.short_term), unit);
        if (part.lower_level) adds.note = "at a lower level: shown, not scored";
        table.rows.push_back(
            {part.substance->name + (part.solution ? " (in solution)" : ""),
             writing::Cell(digits(part.grams), part.grams), std::move(adds),
             writing::Cell(fixed(100.0 * part.share, 0), 100.0 * part.share), part.provenance.datum,
             part.provenance.from_memory ? from_memory(part.provenance.source) : part.provenance.source});
    }
    table.rows.push_back(
        writing::Row({"sum", "", writing::Cell(cell_text(cell), cell.value)}, writing::RowKind::total));
    return table;
}

HazardExplanation explain_hazard(const Assessment& route, std::string_view figure) {
    const HazardGrid grid = route.hazard_grid();
    for (std::size_t e = 0; e < grid.scheme->endpoints.size(); ++e)
        for (std::size_t p = 0; p < place_count; ++p)
            if (figure == fmt::format("{}_{}", grid.scheme->endpoints[e].id, place_ids[p]))
                return explain_cell(grid, e, static_cast<HazardPlace>(p));
    return explain_score(route, grid);
}

} // namespace routeweigh::documents
