// SPDX-License-Identifier: MIT
// What programs read of the waste of routes: the tree of waste.schema.json, and one row a stream.
#include "assess/streams/quench_words.hpp"
#include "documents/destination.hpp"
#include "documents/shared_figure.hpp"
#include "documents/version.hpp"
#include "documents/waste/waste_parts.hpp"

#include <utility>

namespace routeweigh::documents {
namespace {

using streams::CompatibilityReport;
using streams::Decision;
using streams::HandoutFinding;
using streams::StreamAdvice;
using writing::MachineList;
using writing::MachineObject;
using writing::MachineTree;
using writing::text_list;

MachineTree optional_number(const std::optional<double>& value) {
    return value ? MachineTree(*value) : MachineTree();
}

const char* id_of(Decision::Outcome outcome) {
    switch (outcome) {
    case Decision::Outcome::container:
        return "container";
    case Decision::Outcome::own_bottle:
        return "own_bottle";
    case Decision::Outcome::air:
        return "air";
    case Decision::Outcome::trap:
        return "trap";
    case Decision::Outcome::recovered:
        return "recovered";
    case Decision::Outcome::on_product:
        return "on_product";
    case Decision::Outcome::nothing:
        break;
    }
    return "nothing";
}

const char* id_of(HandoutFinding::Verdict verdict) {
    switch (verdict) {
    case HandoutFinding::Verdict::none_named:
        return "none_named";
    case HandoutFinding::Verdict::not_understood:
        return "not_understood";
    case HandoutFinding::Verdict::agrees:
        return "agrees";
    case HandoutFinding::Verdict::agrees_after_treatment:
        return "agrees_after_treatment";
    case HandoutFinding::Verdict::differs:
        break;
    }
    return "differs";
}

const char* id_of(CompatibilityReport::Verdict verdict) {
    switch (verdict) {
    case CompatibilityReport::Verdict::conflict:
        return "conflict";
    case CompatibilityReport::Verdict::not_assessed:
        return "not_assessed";
    case CompatibilityReport::Verdict::ask:
        return "ask";
    case CompatibilityReport::Verdict::nothing_found:
        break;
    }
    return "nothing_found";
}

MachineTree composition_tree(const streams::RouteStream& stream) {
    MachineList list;
    const auto add = [&](const Substance& substance) {
        list.emplace_back(MachineObject{{"substance", substance.name},
                                        {"grams", stream.nominal.grams(substance)},
                                        {"grams_unreacted", stream.unreacted.grams(substance)}});
    };
    for (const streams::Portion& portion : stream.nominal.portions())
        add(*portion.substance);
    for (const streams::Portion& portion : stream.unreacted.portions())
        if (stream.nominal.grams(*portion.substance) == 0) add(*portion.substance);
    return list;
}

MachineTree reasons_tree(const Decision& decision) {
    MachineList list;
    for (const streams::Reason& reason : decision.reasons)
        list.emplace_back(MachineObject{{"what", reason.what},
                                        {"words", reason.words},
                                        {"value", optional_number(reason.value)},
                                        {"line", optional_number(reason.line)},
                                        {"unit", reason.unit},
                                        {"source", reason.source}});
    return list;
}

MachineTree meetings_tree(const std::vector<streams::Meeting>& meetings) {
    MachineList list;
    for (const streams::Meeting& meeting : meetings) {
        MachineList bases;
        for (const streams::MeetingBasis& basis : meeting.bases)
            bases.emplace_back(MachineObject{{"words", basis.words},
                                             {"codes", text_list(basis.codes)},
                                             {"standing", std::string(words_of(basis.from.standing))},
                                             {"source", basis.from.source}});
        list.emplace_back(MachineObject{{"one", meeting.one.name},
                                        {"other", meeting.other.name},
                                        {"codes", text_list(meeting.codes)},
                                        {"trace", meeting.trace},
                                        {"bases", std::move(bases)},
                                        {"disagreement", meeting.disagreement}});
    }
    return list;
}

MachineTree report_tree(const std::optional<CompatibilityReport>& report) {
    if (!report) return {};
    return MachineObject{{"verdict", id_of(report->verdict)},
                         {"words", report->words},
                         {"meetings", meetings_tree(report->meetings)},
                         {"not_assigned", text_list(report->not_assigned)},
                         {"outside_chart", text_list(report->outside_chart)}};
}

MachineTree stream_tree(const Route& route, const StreamAdvice& advice, double pots) {
    MachineList first;
    for (const streams::Treatment& treatment : advice.decision.first)
        first.emplace_back(treatment.words);
    return MachineObject{
        {"step", advice.stream.step_id},
        {"name", advice.stream.name},
        {"millilitres_per_pot",
         advice.stream.is_gas() ? MachineTree() : MachineTree(advice.largest_volume())},
        {"volume", advice.stream.is_gas() || advice.decision.outcome == Decision::Outcome::on_product
                       ? MachineTree()
                       : machine_of(stream_volume(route, advice), Edition::key)},
        {"pots", pots * advice.stream.runs},
        {"outcome", id_of(advice.decision.outcome)},
        {"container", advice.decision.kind ? MachineTree(std::string(streams::id_of(*advice.decision.kind)))
                                           : MachineTree()},
        {"goes_to", advice.decision.goes_to},
        {"summary", advice.decision.summary},
        {"first", std::move(first)},
        {"handout", MachineObject{{"says", advice.handout.said},
                                  {"verdict", id_of(advice.handout.verdict)},
                                  {"words", advice.handout.words}}},
        {"composition", composition_tree(advice.stream)},
        {"reasons", reasons_tree(advice.decision)},
        {"vent", text_list(advice.decision.vent)},
        {"within", meetings_tree(advice.inside.within)},
        {"not_assigned", text_list(advice.inside.not_assigned)},
        {"with_others", report_tree(advice.with_others)},
        {"with_log", report_tree(advice.with_log)}};
}

MachineTree need_tree(const streams::QuenchNeed& need) {
    MachineList left;
    for (const auto* list : {&need.oxidisers, &need.reducers})
        for (const streams::LeftToDestroy& one : *list)
            left.emplace_back(MachineObject{{"substance", one.substance->name}, {"mol", one.moles}});
    for (const streams::StopHit& hit : need.listed)
        left.emplace_back(MachineObject{{"substance", hit.substance->name},
                                        {"mol", hit.grams / hit.substance->molar_mass}});
    return MachineObject{{"left", std::move(left)},
                         {"sodium_hydrogensulfite_g", need.hydrogensulfite},
                         {"sodium_disulfite_g", need.metabisulfite},
                         {"sodium_thiosulfate_pentahydrate_g", need.thiosulfate},
                         {"acid_made_mol", need.acid_made},
                         {"strong_acid_mol", need.strong_acid},
                         {"weak_acid_mol", need.weak_acid}};
}

MachineTree bases_tree(const streams::Neutralisation& needed) {
    MachineList list;
    for (const streams::BaseNeeded& base : needed.bases)
        list.emplace_back(
            MachineObject{{"base", base.base->name}, {"grams", base.grams}, {"gas_litres", base.gas_litres}});
    return MachineObject{{"acid_mol", needed.acid}, {"vessel_mL", needed.vessel}, {"bases", std::move(list)}};
}

std::string verdict_id(streams::QuenchPlan::Verdict verdict) {
    std::string id{streams::words_of(verdict)};
    for (char& letter : id)
        if (letter == ' ') letter = '_';
    return id;
}

MachineTree quench_tree(const streams::QuenchPlan& plan, double pots) {
    MachineList planned, gases;
    for (const streams::PlannedQuench& one : plan.planned)
        planned.emplace_back(MachineObject{{"substance", one.substance->name},
                                           {"grams", one.grams},
                                           {"material", one.material},
                                           {"material_grams", one.grams_of_material}});
    for (const streams::FreedGas& gas : streams::freed_gases(plan, pots))
        gases.emplace_back(MachineObject{
            {"gas", gas.gas}, {"when", gas.when}, {"pot_litres", gas.pot}, {"room_litres", gas.room}});
    return MachineObject{{"step", plan.step_id},
                         {"verdict", verdict_id(plan.verdict)},
                         {"words", plan.words},
                         {"planned", std::move(planned)},
                         {"nominal", need_tree(plan.nominal)},
                         {"unreacted", need_tree(plan.unreacted)},
                         {"extra", MachineObject{{"of", plan.extra_of},
                                                 {"grams", plan.extra},
                                                 {"material_grams", plan.extra_material}}},
                         {"strong_acid", bases_tree(plan.strong)},
                         {"needed", bases_tree(plan.needed)},
                         {"with_weak_acid", bases_tree(plan.with_weak)},
                         {"gases", std::move(gases)},
                         {"order", text_list(plan.order)},
                         {"warnings", text_list(plan.warnings)}};
}

MachineTree fit_tree(const streams::ClassWaste& one) {
    MachineList list;
    for (const streams::ContainerFit& fit : one.fits)
        list.emplace_back(MachineObject{{"container", std::string(streams::id_of(fit.container->kind))},
                                        {"name", fit.container->name},
                                        {"millilitres_per_pot", fit.per_pot},
                                        {"millilitres", fit.volume},
                                        {"present_millilitres", fit.present},
                                        {"usable_millilitres", fit.usable},
                                        {"needed", fit.containers},
                                        {"last_full", fit.last_full},
                                        {"call_for_pickup", fit.call},
                                        {"vent", text_list(fit.vent)}});
    return list;
}

MachineTree route_tree(const streams::ClassWaste& one) {
    MachineList streams_list, quenches, own;
    for (const StreamAdvice& advice : one.waste.streams)
        streams_list.emplace_back(stream_tree(*one.route, advice, one.pots));
    for (const streams::QuenchPlan& plan : one.waste.quenches)
        quenches.emplace_back(quench_tree(plan, one.pots));
    for (const streams::OwnBottle& bottle : one.own_bottles)
        own.emplace_back(MachineObject{{"stream", bottle.stream}, {"millilitres", bottle.volume}});
    return MachineObject{{"id", one.route->id},
                         {"title", one.route->title},
                         {"pots", one.pots},
                         {"streams", std::move(streams_list)},
                         {"quenches", std::move(quenches)},
                         {"containers", fit_tree(one)},
                         {"own_bottles", std::move(own)}};
}

} // namespace

MachineTree waste_tree(const WasteSubject& subject) {
    const streams::LocalRules& local = subject.rules->local;
    MachineList mismatches, routes, logs, cautions;
    for (const streams::ClassWaste& one : subject.routes) {
        for (const StreamAdvice* advice : one.waste.mismatches())
            mismatches.emplace_back(MachineObject{{"route", one.route->id},
                                                  {"step", advice->stream.step_id},
                                                  {"stream", advice->stream.name},
                                                  {"words", advice->handout.words}});
        routes.emplace_back(route_tree(one));
    }
    for (const streams::ContainerLog& log : *subject.logs)
        logs.emplace_back(MachineObject{{"file", log.file},
                                        {"container", std::string(streams::id_of(log.container))},
                                        {"millilitres", log.millilitres()}});
    for (const writing::Text& line : waste_cautions().items)
        cautions.emplace_back(line.runs.front().text);
    return MachineObject{{"routeweigh", std::string(program_version())},
                         {"rules", MachineObject{{"id", local.id},
                                                 {"title", local.title},
                                                 {"jurisdiction", local.jurisdiction},
                                                 {"contact", local.contact}}},
                         {"students", subject.students},
                         {"students_per_pot", subject.team},
                         {"logs", std::move(logs)},
                         {"mismatches", std::move(mismatches)},
                         {"routes", std::move(routes)},
                         {"cautions", std::move(cautions)}};
}

writing::DataRows waste_rows(const WasteSubject& subject) {
    writing::DataRows data;
    data.columns = {"route",       "step",    "stream", "millilitres_per_pot",
                    "millilitres", "goes_to", "first",  "handout_says",
                    "handout",     "with_log"};
    for (const streams::ClassWaste& one : subject.routes)
        for (const StreamAdvice& advice : one.waste.streams) {
            const bool liquid = !advice.stream.is_gas();
            const double volume = advice.largest_volume();
            data.rows.push_back(
                {one.route->id, advice.stream.step_id, advice.stream.name,
                 liquid ? writing::DataCell(volume) : writing::DataCell(),
                 liquid ? writing::DataCell(volume * one.pots * advice.stream.runs) : writing::DataCell(),
                 advice.decision.goes_to, first_words(advice.decision), advice.handout.said,
                 std::string(id_of(advice.handout.verdict)),
                 advice.with_log ? std::string(id_of(advice.with_log->verdict)) : std::string()});
        }
    return data;
}

} // namespace routeweigh::documents
