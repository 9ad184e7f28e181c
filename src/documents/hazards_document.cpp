// SPDX-License-Identifier: MIT
#include "documents/hazards_document.hpp"

#include "base/index.hpp"
#include "documents/cautions.hpp"
#include "documents/classified_mixture.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"
#include "route/flat_route.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

using namespace documents;

std::string bottle_name(const ClassifiedBottle& bottle) {
    return bottle.made_in.empty() ? bottle.material->name
                                  : fmt::format("{}, made in {}", bottle.material->name, bottle.made_in);
}

constexpr std::string_view nominal_reading = "loss as lost product", unreacted_reading = "loss as unreacted";

struct NamedReading {
    const ClassifiedReading* reading;
    std::string_view name; ///< "" where both readings have one label
};

std::vector<NamedReading> readings_of(const ClassifiedStream& stream) {
    if (!stream.readings_differ()) return {{&stream.first(), {}}};
    return {{&*stream.nominal, nominal_reading}, {&*stream.unreacted, unreacted_reading}};
}

std::string_view kind_words(const streams::RouteStream& stream) {
    switch (stream.kind) {
    case StreamKind::gas:
        return "gas";
    case StreamKind::vapour:
        return "vapour";
    case StreamKind::residue:
        return "residue";
    case StreamKind::liquid:
        break;
    }
    return "liquid";
}

std::vector<writing::Column> columns(std::string first, std::string grams) {
    return {{.heading = std::move(first)},
            {.heading = std::move(grams), .align = writing::Align::decimal, .unit = "g"},
            {.heading = "signal word"},
            {.heading = "statements"},
            {.heading = "not assessed", .align = writing::Align::decimal, .unit = "%"}};
}

writing::Row row(std::string name, double grams, const MixtureClassification& classification) {
    return {std::move(name), digits_cell(grams), signal_word(classification), statement_codes(classification),
            writing::Cell(unassessed_text(classification), classification.unassessed_percent)};
}

void add_bottles(const Route& route, const ClassifiedRoute& classified, const ClassificationRules& rules,
                 Blocks& blocks) {
    blocks.push_back(writing::Heading{3, "Bottles of route " + route.id, "bottles-" + route.id});
    writing::Table table;
    table.caption = fmt::format("Bottles that route {} opens, with what is charged in one run", route.id);
    table.columns = columns("bottle", "charged");
    for (const ClassifiedBottle& bottle : classified.bottles)
        table.rows.push_back(row(bottle_name(bottle), bottle.grams, bottle.classification));
    blocks.push_back(std::move(table));
    for (const ClassifiedBottle& bottle : classified.bottles) {
        blocks.push_back(writing::Heading{4, capitalised(bottle_name(bottle))});
        add_classified(bottle.classification, rules.mixture.labels, nullptr, blocks);
    }
}

void add_streams(const Route& route, const ClassifiedRoute& classified, const ClassificationRules& rules,
                 Blocks& blocks) {
    blocks.push_back(writing::Heading{3, "Streams of route " + route.id, "streams-" + route.id});
    writing::Table table;
    table.caption = fmt::format("Streams that route {} leaves, from one run of their step", route.id);
    table.columns = columns("stream", "left");
    table.remarks = {
        "Two lines where the label depends on how a yield below 100 % is read: the loss as product "
        "that went into the workup, or as substrate that never reacted. Vapour is judged as what "
        "condenses. No pH is predicted, so the rule for an extreme pH is not applied."};
    for (const ClassifiedStream& stream : classified.streams) {
        if (stream.stream.stays_on_product()) {
            table.remarks.push_back(writing::Text(
                fmt::format("{}, {} g, is so little that it stays on the product.",
                            capitalised(stream.stream.title), digits(stream.first().grams, 2))));
            continue;
        }
        for (const NamedReading& reading : readings_of(stream)) {
            std::string name = stream.stream.title;
            if (!reading.name.empty()) name += fmt::format(", {}", reading.name);
            table.rows.push_back(
                row(std::move(name), reading.reading->grams, reading.reading->classification));
        }
    }
    if (table.rows.empty()) {
        blocks.push_back(writing::Paragraph{"Nothing is left that leaves the bench."});
        return;
    }
    blocks.push_back(std::move(table));
    for (const ClassifiedStream& stream : classified.streams) {
        if (stream.stream.stays_on_product()) continue;
        for (const NamedReading& reading : readings_of(stream)) {
            std::string name = capitalised(stream.stream.title);
            if (!reading.name.empty()) name += fmt::format(" ({})", reading.name);
            blocks.push_back(writing::Heading{4, name});
            add_classified(reading.reading->classification, rules.mixture.labels, &reading.reading->paired,
                           blocks);
        }
    }
}

writing::MachineTree reading_tree(const NamedReading& reading, const LabelElements& elements) {
    return writing::MachineObject{
        {"reading", reading.name.empty()              ? "both"
                    : reading.name == nominal_reading ? "nominal"
                                                      : "unreacted"},
        {"grams", reading.reading->grams},
        {"pairing", pairing_tree(reading.reading->paired)},
        {"classification", classified_tree(reading.reading->classification, elements)}};
}

writing::MachineTree route_tree(const Route& route, const ClassifiedRoute& classified,
                                const LabelElements& elements) {
    writing::MachineList bottles, streams;
    for (const ClassifiedBottle& bottle : classified.bottles)
        bottles.emplace_back(
            writing::MachineObject{{"material", bottle.material->id},
                                   {"name", bottle.material->name},
                                   {"grams", bottle.grams},
                                   {"made_in", bottle.made_in},
                                   {"classification", classified_tree(bottle.classification, elements)}});
    for (const ClassifiedStream& stream : classified.streams) {
        writing::MachineList readings;
        for (const NamedReading& reading : readings_of(stream))
            readings.push_back(reading_tree(reading, elements));
        streams.emplace_back(writing::MachineObject{{"step", stream.stream.step_id},
                                                    {"name", stream.stream.name},
                                                    {"kind", std::string(kind_words(stream.stream))},
                                                    {"stays_on_product", stream.stream.stays_on_product()},
                                                    {"readings", std::move(readings)}});
    }
    return writing::MachineObject{{"id", route.id},
                                  {"title", route.title},
                                  {"bottles", std::move(bottles)},
                                  {"streams", std::move(streams)}};
}

void add_rows(const Route& route, const ClassifiedRoute& classified, writing::DataRows& data) {
    const auto add = [&](std::vector<writing::DataCell> cells, const MixtureClassification& classification) {
        for (writing::DataCell& cell : classified_cells(classification))
            cells.push_back(std::move(cell));
        data.rows.push_back(std::move(cells));
    };
    for (const ClassifiedBottle& bottle : classified.bottles)
        add({route.id, "bottle", bottle.made_in, bottle.material->name, "", bottle.grams},
            bottle.classification);
    for (const ClassifiedStream& stream : classified.streams)
        for (const NamedReading& reading : readings_of(stream))
            add({route.id, "stream", stream.stream.step_id, stream.stream.name,
                 reading.name.empty() ? "both" : std::string(reading.name), reading.reading->grams},
                reading.reading->classification);
}

writing::DataRows rows_head(std::vector<std::string> first) {
    writing::DataRows data;
    data.columns = std::move(first);
    for (std::string& column : classified_columns())
        data.columns.push_back(std::move(column));
    return data;
}

} // namespace

writing::Document hazards_document(const std::vector<Route>& routes, const ClassificationRules& rules) {
    writing::Document document;
    document.id = "hazards";
    document.title = routes.size() == 1
                         ? fmt::format("Bottles and streams of route {}", routes.front().id)
                         : "Bottles and streams of " + counted(routes.size(), "route", "routes");
    document.subtitle = judged_by(rules.mixture);
    document.rows = rows_head({"route", "what", "step", "name", "reading", "grams"});
    writing::MachineList trees;
    for (const Route& route : routes) {
        const FlatRoute flat(route);
        const ClassifiedRoute classified = classify_route(flat, flat.evaluate(flat.nominal()), rules);
        document.blocks.push_back(
            writing::Heading{2, fmt::format("{}: {}", route.id, route.title), route.id});
        add_bottles(route, classified, rules, document.blocks);
        add_streams(route, classified, rules, document.blocks);
        trees.push_back(route_tree(route, classified, rules.mixture.labels));
        add_rows(route, classified, document.rows);
    }
    document.blocks.push_back(standing_of_classification(true));
    document.blocks.push_back(usual_cautions());
    document.machine = writing::MachineObject{
        {"document", "hazards"}, {"jurisdiction", rules.mixture.limits.title}, {"routes", std::move(trees)}};
    return document;
}

writing::Document mixture_document(const MixtureClassification& classification,
                                   const ClassificationRules& rules,
                                   const streams::PairedComposition* paired) {
    writing::Document document;
    document.id = "mixture";
    document.title = "Classification of " + classification.mixture.name;
    document.subtitle = judged_by(rules.mixture);
    writing::Table table;
    table.caption = "Composition as judged";
    table.columns = {{.heading = "ingredient"},
                     {.heading = "share", .align = writing::Align::decimal, .unit = "%"},
                     {.heading = "own statements"}};
    for (const ResolvedIngredient& ingredient : classification.mixture.ingredients) {
        std::string codes;
        for (const GhsEntry& entry : ingredient.ghs())
            codes += (codes.empty() ? "" : " ") + entry.statement;
        if (codes.empty()) codes = ingredient.assessed() ? "none" : "not assessed";
        table.rows.push_back({ingredient.substance->name, digits_cell(ingredient.percent), codes});
    }
    if (classification.mixture.unstated_percent > 0)
        table.rows.push_back({"not stated", digits_cell(classification.mixture.unstated_percent), "unknown"});
    document.blocks.push_back(std::move(table));
    add_classified(classification, rules.mixture.labels, paired, document.blocks);
    document.blocks.push_back(standing_of_classification(false));
    document.blocks.push_back(usual_cautions());
    document.rows = rows_head({"name"});
    std::vector<writing::DataCell> cells = classified_cells(classification);
    cells.insert(cells.begin(), classification.mixture.name);
    document.rows.rows.push_back(std::move(cells));
    document.machine = writing::MachineObject{
        {"document", "mixture"},
        {"name", classification.mixture.name},
        {"pairing", paired != nullptr ? writing::MachineTree(pairing_tree(*paired)) : writing::MachineTree()},
        {"classification", classified_tree(classification, rules.mixture.labels)}};
    return document;
}

} // namespace routeweigh
