// SPDX-License-Identifier: MIT
// Sources, assumptions, what was recalled rather than read, notes of the route files, cautions.
#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/recalled.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace routeweigh::documents {
namespace {

bool recalled(const std::string& source) {
    return source.find("memory") != std::string::npos;
}

/// One datum of the catalogue that the figures of these routes rest on.
struct Datum {
    std::string owner, what, source;
};

void add_datum(std::vector<Datum>& data, const std::string& owner, const char* what,
               const std::string& source) {
    data.push_back({owner, what, source});
}

std::string source_of(const std::map<std::string, std::string>& sources, const std::string& key) {
    const auto found = sources.find(key);
    return found == sources.end() ? std::string() : found->second;
}

/// Classifications, exposure limits, compositions and densities that were used, each once.
std::vector<Datum> data_used(const ReportView& view) {
    std::set<const Material*> materials;
    std::set<const Substance*> substances;
    for (const RouteView& route : view.routes) {
        for (const Step& step : route.route().steps)
            for (const Stage& stage : step.stages)
                for (const Charge& charge : stage.charges)
                    materials.insert(charge.material);
        for (const FlatStep& step : route.assessment->flat().steps())
            substances.insert(step.substances.begin(), step.substances.end());
    }
    std::vector<Datum> data;
    for (const Material* material : materials) {
        if (!material->is_neat())
            add_datum(data, material->name, "composition", source_of(material->sources, "composition"));
        if (material->density) {
            const std::string source = source_of(material->sources, "density_g_per_mL");
            add_datum(data, material->name, "density", source);
        }
    }
    for (const Substance* substance : substances) {
        if (substance->assessed) add_datum(data, substance->name, "classification", substance->ghs_source);
        if (substance->exposure_limit)
            add_datum(data, substance->name, "exposure limit", substance->exposure_limit->source);
    }
    std::sort(data.begin(), data.end(), [](const Datum& a, const Datum& b) {
        return std::tie(a.owner, a.what) < std::tie(b.owner, b.what);
    });
    return data;
}

void add_catalogue_data(const ReportView& view, Blocks& blocks) {
    const std::vector<Datum> data = data_used(view);
    const auto count =
        std::count_if(data.begin(), data.end(), [](const Datum& datum) { return recalled(datum.source); });
    const double share = data.empty() ? 0.0 : static_cast<double>(count) / static_cast<double>(data.size());
    blocks.push_back(writing::Heading{3, "Data of the catalogue", "catalogue-data"});
    blocks.push_back(writing::Paragraph{
        {writing::Run("The figures rest on "), writing::number(fmt::format("{}", data.size())),
         writing::Run(" classifications, exposure limits, compositions and densities of the catalogue. "),
         writing::number(fmt::format("{} ({})", count, percent(share))),
         writing::Run(" of them come from memory and are to be checked first. Molar masses follow from the "
                      "formulas with the "
                      "standard atomic weights of IUPAC 2021, abridged.")}});
    writing::Table table;
    table.caption = "Catalogue data behind the figures; what comes from memory first";
    table.columns = {{.heading = "substance or material"}, {.heading = "datum"}, {.heading = "source"}};
    for (const bool from_memory : {true, false})
        for (const Datum& datum : data)
            if (recalled(datum.source) == from_memory)
                table.rows.push_back({datum.owner, datum.what,
                                      datum.source.empty() ? std::string("no source stated")
                                      : from_memory        ? documents::from_memory(datum.source)
                                                           : datum.source});
    blocks.push_back(writing::Folded{"Every datum with its source", {std::move(table)}, "data"});
}

/// Yields, conversions and held liquor that a file assumes, and its notes; these decide where mass goes.
std::vector<std::string> assumptions(const RouteView& route) {
    std::vector<std::string> list;
    for (const Step& step : route.route().steps) {
        const std::string name = route.route().steps.size() > 1 ? step.id + ": " : std::string();
        if (const Isolated& isolated = step.isolated; isolated.assumed || !isolated.note.empty())
            list.push_back(fmt::format(
                "{}yield {}{}{}", name,
                isolated.yield ? percent(*isolated.yield) : digits(isolated.mass->in(unit::g), 4) + " g",
                isolated.assumed ? " assumed" : "", isolated.note.empty() ? "" : "; " + isolated.note));
        std::set<double> held;
        for (const Stage& stage : step.stages) {
            for (const Separation& separation : stage.separations)
                if (separation.held > 0.0) held.insert(separation.held);
            for (const Reaction& reaction : stage.reactions)
                if (reaction.conversion < 1.0)
                    list.push_back(fmt::format("{}conversion {} of {} in \"{}\"", name,
                                               percent(reaction.conversion), reaction.of->name, stage.title));
        }
        for (const double grams : held)
            list.push_back(fmt::format("{}liquor held back: {:g} g per gram of what is kept", name, grams));
    }
    list.insert(list.end(), route.route().notes.begin(), route.route().notes.end());
    return list;
}

/// Each assumption once, with the routes that make it; what holds for all stands first.
writing::BulletList all_assumptions(const ReportView& view) {
    std::vector<std::pair<std::string, std::vector<std::string>>> groups;
    for (const RouteView& route : view.routes)
        for (const std::string& text : assumptions(route)) {
            const auto found = std::find_if(groups.begin(), groups.end(),
                                            [&](const auto& entry) { return entry.first == text; });
            if (found == groups.end())
                groups.emplace_back(text, std::vector{route.id});
            else if (found->second.back() != route.id)
                found->second.push_back(route.id);
        }
    std::stable_partition(groups.begin(), groups.end(),
                          [&](const auto& entry) { return entry.second.size() == view.routes.size(); });
    writing::BulletList list;
    for (const auto& [text, routes] : groups) {
        const bool all = routes.size() == view.routes.size();
        list.items.push_back(
            {writing::strong(all && !view.single() ? "Every route:" : join(routes, ", ") + ":"),
             writing::Run(" " + text)});
    }
    return list;
}

std::string note_of(const Charge& charge) {
    const bool both = !charge.given_as.empty() && !charge.note.empty();
    return charge.given_as + (both ? "; " : "") + charge.note;
}

writing::Table charges(const RouteView& route) {
    writing::Table table;
    table.caption = "Charges of " + route.id + " and where each amount comes from";
    table.columns = {{.heading = "material"},
                     {.heading = "amount", .align = writing::Align::right},
                     {.heading = "role"},
                     {.heading = "source"},
                     {.heading = "note"}};
    for (const Step& step : route.route().steps) {
        if (route.route().steps.size() > 1) table.rows.push_back(writing::group(step.title));
        for (const Stage& stage : step.stages)
            for (const Charge& charge : stage.charges) {
                std::string amount = charge.as_used
                                         ? "as used"
                                         : fmt::format("{:g} {}", charge.amount.value, charge.amount.unit);
                if (charge.amount.repeat > 1)
                    amount = fmt::format("{} \u00D7 {}", charge.amount.repeat, amount);
                table.rows.push_back({charge.material->name, amount, std::string(charge.role->name),
                                      charge.source, note_of(charge)});
            }
    }
    return table;
}

} // namespace

void add_sources(const ReportView& view, Blocks& blocks) {
    blocks.push_back(writing::Heading{3, "Sources of the routes", "route-sources"});
    for (const RouteView& route : view.routes) {
        blocks.push_back(writing::Paragraph{{writing::strong(route.id + ", " + route.standing + ":"),
                                             writing::Run(" " + route.route().origin)}});
        blocks.push_back(writing::Folded{{writing::Run("Charges of "), writing::strong(route.id),
                                          writing::Run(", each amount with its source")},
                                         {charges(route)},
                                         route.source_anchor()});
    }
    blocks.push_back(writing::Heading{3, "Assumptions and notes of the route files", "assumptions"});
    blocks.push_back(all_assumptions(view));
    add_catalogue_data(view, blocks);
    blocks.push_back(not_predicted());
    blocks.push_back(usual_cautions());
}

} // namespace routeweigh::documents
