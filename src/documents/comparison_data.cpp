// SPDX-License-Identifier: MIT
#include "documents/comparison_data.hpp"

#include "base/index.hpp"
#include "chemistry/element.hpp"
#include "documents/certainty_data.hpp"
#include "documents/report_view.hpp"
#include "documents/version.hpp"

#include <cmath>
#include <optional>
#include <utility>

namespace routeweigh::documents {
namespace {

using writing::MachineList;
using writing::MachineObject;
using writing::MachineTree;
using writing::object;
using writing::text_list;

std::string_view kind_words(StreamKind kind) {
    switch (kind) {
    case StreamKind::liquid:
        return "liquid";
    case StreamKind::vapour:
        return "vapour";
    case StreamKind::gas:
        return "gas";
    case StreamKind::residue:
        break;
    }
    return "residue";
}

std::string_view side_words(LedgerRow::Side side) {
    switch (side) {
    case LedgerRow::Side::in:
        return "in";
    case LedgerRow::Side::product:
        return "product";
    case LedgerRow::Side::recovered:
        return "recovered";
    case LedgerRow::Side::stream:
        break;
    }
    return "stream";
}

std::string_view verdict_id(MassVerdict verdict) {
    switch (verdict) {
    case MassVerdict::lower:
        return "lower";
    case MassVerdict::higher:
        return "higher";
    case MassVerdict::depends:
        return "depends";
    case MassVerdict::within_yield:
        return "within_yield";
    case MassVerdict::within_draws:
        return "within_draws";
    case MassVerdict::equal:
        break;
    }
    return "equal";
}

MachineTree figures_tree(const std::vector<Figure>& figures) {
    MachineList list;
    for (const Figure& figure : figures)
        list.emplace_back(object({{"id", figure.id},
                                  {"value", figure.value},
                                  {"unit", figure.unit},
                                  {"low", figure.low},
                                  {"high", figure.high},
                                  {"note", figure.note}}));
    return list;
}

MachineTree definitions_tree(const std::vector<Figure>& figures) {
    MachineList list;
    for (const Figure& figure : figures)
        list.emplace_back(object({{"id", figure.id},
                                  {"name", figure.name},
                                  {"unit", figure.unit},
                                  {"boundary", figure.boundary},
                                  {"reference", figure.reference}}));
    return list;
}

const StreamNote* note_on(const Step& step, const std::string& stream) {
    for (const StreamNote& note : step.streams)
        if (note.name == stream) return &note;
    return nullptr;
}

MachineTree route_streams_tree(const Assessment& route) {
    MachineList list;
    for (const FlatStream& stream : route.flat().streams()) {
        const FlatStep& flat = route.flat().steps()[at(stream.step)];
        const Step& step = route.route().steps[at(stream.step)];
        MachineList substances;
        double mass = 0.0, mass_unreacted = 0.0;
        for (std::size_t s = 0; s < flat.substances.size(); ++s) {
            const std::size_t index = at(stream.first_outflow) + s;
            const double grams = route.evaluation().out[index];
            const double unreacted = route.evaluation().out_unreacted[index];
            if (grams == 0.0 && unreacted == 0.0) continue;
            mass += grams;
            mass_unreacted += unreacted;
            substances.emplace_back(object(
                {{"substance", flat.substances[s]->name}, {"grams", grams}, {"grams_unreacted", unreacted}}));
        }
        if (substances.empty()) continue;
        const StreamNote* note = note_on(step, stream.name);
        list.emplace_back(object({{"step", step.id},
                                  {"name", stream.name},
                                  {"kind", std::string(kind_words(stream.kind))},
                                  {"container", note != nullptr ? note->container : std::string()},
                                  {"grams", mass},
                                  {"grams_unreacted", mass_unreacted},
                                  {"substances", std::move(substances)}}));
    }
    return list;
}

MachineTree reactions_tree(const Assessment& route, std::size_t index) {
    const auto extents = route.flat().extents(static_cast<int>(index), route.flat().nominal());
    MachineList list;
    const std::vector<Stage>& stages = route.route().steps[index].stages;
    for (std::size_t g = 0; g < stages.size(); ++g)
        for (std::size_t r = 0; r < stages[g].reactions.size(); ++r)
            list.emplace_back(object({{"stage", stages[g].title},
                                      {"equation", stages[g].reactions[r].equation.text},
                                      {"conversion", 100.0 * stages[g].reactions[r].conversion},
                                      {"extent_mol", extents[g][r]}}));
    return list;
}

MachineTree steps_tree(const Assessment& route) {
    MachineList list;
    for (std::size_t s = 0; s < route.route().steps.size(); ++s) {
        const Step& step = route.route().steps[s];
        const StepResult& result = route.evaluation().steps[s];
        const double molar_mass = step.product->molar_mass;
        const auto reading = [&](double made) {
            return object({{"made", made * molar_mass},
                           {"isolated", result.isolated * molar_mass},
                           {"lost", (made - result.isolated) * molar_mass},
                           {"unreacted", (result.theory - made) * molar_mass}});
        };
        list.emplace_back(object({{"id", step.id},
                                  {"title", step.title},
                                  {"product", step.product->name},
                                  {"overall", step.overall.text},
                                  {"runs", result.scale},
                                  {"theoretical", result.theory * molar_mass},
                                  {"yield", 100.0 * result.isolated / result.theory},
                                  {"yield_assumed", step.isolated.assumed},
                                  {"loss_in_workup", reading(result.made)},
                                  {"loss_unreacted", reading(result.isolated)},
                                  {"reactions", reactions_tree(route, s)}}));
    }
    return list;
}

MachineTree ledger_tree(const Assessment& route, const Ledger& ledger) {
    MachineList list;
    for (const LedgerRow& row : ledger.rows)
        list.emplace_back(object({{"side", std::string(side_words(row.side))},
                                  {"step", route.route().steps[at(row.step)].id},
                                  {"place", row.place},
                                  {"substance", row.substance->name},
                                  {"grams", row.grams},
                                  {"pointer", row.pointer}}));
    return list;
}

MachineTree balance_tree(const Ledger& ledger) {
    MachineList elements;
    for (const ElementBalance& balance : ledger.elements)
        elements.emplace_back(object(
            {{"element", balance.element > 0 ? std::string(element_symbol(balance.element)) : "mixture"},
             {"in", balance.in},
             {"out", balance.out}}));
    return object({{"in", ledger.in},
                   {"product", ledger.product},
                   {"recovered", ledger.recovered},
                   {"streams", ledger.streams},
                   {"closure_error", ledger.closure_error()},
                   {"elements", std::move(elements)}});
}

MachineTree same_auxiliaries_tree(const Comparison& comparison, const Certainty* drawn, std::size_t route) {
    if (comparison.routes().size() == 1) return {};
    const RouteComparison& compared = comparison.against_baseline(route);
    MachineTree same, written;
    if (compared.break_even) {
        same = 100.0 * compared.break_even->same_auxiliaries;
        written = 100.0 * compared.break_even->as_written;
    }
    const std::optional<MassVerdict> mass = mass_verdict(comparison, drawn, route);
    return object({{"process_mass_intensity", compared.same_auxiliaries.process_mass_intensity},
                   {"inserted", compared.same_auxiliaries.inserted},
                   {"break_even_yield", std::move(same)},
                   {"break_even_yield_as_written", std::move(written)},
                   {"verdict", mass ? MachineTree(std::string(verdict_id(*mass))) : MachineTree()}});
}

MachineTree route_tree(const Comparison& comparison, const Certainty* drawn, std::size_t index,
                       const std::vector<Figure>& figures) {
    const Assessment& route = comparison.route(index);
    const Ledger ledger = route.ledger();
    return object({{"id", route.route().id},
                   {"title", route.route().title},
                   {"product", route.route().product->name},
                   {"status", route.route().status},
                   {"source", route.route().origin},
                   {"yield_assumed", route.yield_assumed()},
                   {"figures", figures_tree(figures)},
                   {"same_auxiliaries", same_auxiliaries_tree(comparison, drawn, index)},
                   {"steps", steps_tree(route)},
                   {"streams", route_streams_tree(route)},
                   {"ledger", ledger_tree(route, ledger)},
                   {"balance", balance_tree(ledger)},
                   {"notes", text_list(route.route().notes)}});
}

} // namespace

MachineTree comparison_tree(const Comparison& comparison, const Certainty* drawn) {
    MachineList routes;
    MachineTree definitions;
    for (std::size_t i = 0; i < comparison.routes().size(); ++i) {
        const std::vector<Figure> figures = figures_of(comparison, i);
        if (i == 0) definitions = definitions_tree(figures);
        routes.push_back(route_tree(comparison, drawn, i, figures));
    }
    MachineObject tree{{"routeweigh", std::string(program_version())},
                       {"baseline", comparison.baseline().route().id},
                       {"definitions", std::move(definitions)},
                       {"routes", std::move(routes)}};
    if (drawn != nullptr) tree.push_back({"certainty", certainty_tree(ReportView(comparison, drawn))});
    return tree;
}

writing::DataRows comparison_rows(const Comparison& comparison) {
    writing::DataRows data;
    data.columns = {"route", "figure", "value",    "unit",   "low",
                    "high",  "note",   "boundary", "status", "source"};
    const auto cell = [](double value) {
        return std::isfinite(value) ? writing::DataCell(value) : writing::DataCell();
    };
    for (std::size_t i = 0; i < comparison.routes().size(); ++i) {
        const Route& route = comparison.route(i).route();
        for (const Figure& figure : figures_of(comparison, i))
            data.rows.push_back({route.id, figure.id, cell(figure.value), figure.unit, cell(figure.low),
                                 cell(figure.high), figure.note, figure.boundary, route.status,
                                 route.origin});
    }
    return data;
}

} // namespace routeweigh::documents
