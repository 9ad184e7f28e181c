// SPDX-License-Identifier: MIT
// An intermediate carried on as crude: its step ends before the purification, and the next step takes what
// there is. Where what stays on the crude is grave, and gives a toxic gas or explodes with what is charged
// there, it is not to be tried.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"
#include "compare/deadly.hpp"

#include "assess/streams/route_stream.hpp"
#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace routeweigh {
namespace {

/// Nothing is made or charged as reactant in it, so that it can be left out.
bool only_purifies(const Stage& stage) {
    return stage.phase == Phase::purification && stage.reactions.empty() &&
           std::none_of(stage.charges.begin(), stage.charges.end(),
                        [](const Charge& charge) { return charge.role->reactant; });
}

bool feeds_a_step(const FlatRoute& flat, int step) {
    const auto inflows = flat.inflows();
    return std::any_of(inflows.begin(), inflows.end(),
                       [&](const Inflow& inflow) { return inflow.fed_by == step; });
}

/// Notes on streams that only the stages left out lead to, from the end of the list on.
std::vector<Assignment> notes_left_over(const Step& step) {
    std::set<std::string> gone, kept{step.rest, step.gas};
    for (const Stage& stage : step.stages)
        for (const Separation& separation : stage.separations)
            (only_purifies(stage) ? gone : kept).insert(separation.to);
    std::vector<Assignment> changes;
    for (auto note = step.streams.rbegin(); note != step.streams.rend(); ++note)
        if (gone.contains(note->name) && !kept.contains(note->name)) changes.push_back({note->pointer, ""});
    return changes;
}

/// The loss that the stages left out took is shared by the others in the ratio they have.
std::vector<Assignment> losses_shared_anew(const Step& step) {
    double kept = 0.0;
    bool gone = false;
    std::vector<const Separation*> separations;
    for (const Stage& stage : step.stages)
        for (const Separation& separation : stage.separations) {
            if (separation.loss.value_or(0.0) == 0.0) continue;
            if (only_purifies(stage)) {
                gone = true;
            } else {
                kept += *separation.loss;
                separations.push_back(&separation);
            }
        }
    std::vector<Assignment> changes;
    if (gone)
        for (const Separation* separation : separations)
            changes.push_back({separation->pointer + "/loss",
                               json_quoted(fmt::format("{:.13f} %", 100.0 * *separation->loss / kept))});
    return changes;
}

/// What stays on the crude, of each substance the larger of both readings of the yield; g for one run of the
/// step.
streams::Composition left_on_crude(const Trial& trial, int step) {
    streams::Composition left;
    for (const streams::RouteStream& stream :
         streams::streams_of(trial.figures().flat(), trial.values().evaluation)) {
        if (stream.step != step || stream.kind != StreamKind::residue) continue;
        for (const streams::Portion& portion : stream.nominal.portions())
            left.add(*portion.substance, std::max(portion.grams, stream.unreacted.grams(*portion.substance)),
                     portion.trace);
        for (const streams::Portion& portion : stream.unreacted.portions())
            if (stream.nominal.grams(*portion.substance) == 0.0)
                left.add(*portion.substance, portion.grams, portion.trace);
    }
    return left;
}

/// What the steps that take the product are charged with beside it.
std::vector<streams::Participant> charged_next(const CandidateSource& source, int step,
                                               const streams::ReactivityGroups& groups) {
    const auto inflows = source.assessment.flat().inflows();
    std::vector<streams::Participant> charged;
    for (const Inflow& feed : inflows) {
        if (feed.fed_by != step) continue;
        streams::Composition pot;
        for (std::size_t i = 0; i < inflows.size(); ++i)
            if (inflows[i].step == feed.step && inflows[i].fed_by != step)
                pot.add(*inflows[i].substance, source.assessment.evaluation().in[i]);
        join_participants(charged, participants_of(pot, groups));
    }
    return charged;
}

/// A little of it is enough, or the rules of waste never let it into a shared container.
bool is_grave(const streams::Participant& part, const streams::LocalRules& local) {
    if (!fatal_statement(*part.substance).empty() || !gas_with_acid_statement(*part.substance).empty())
        return true;
    return std::any_of(local.stops.begin(), local.stops.end(),
                       [&](const streams::StopRule& stop) { return !stop.destroy && stop.set.holds(part); });
}

/// What is carried on with the crude and meets what it does not get on with, told in the candidate: as what
/// speaks against it where something grave may give a toxic gas or explode; else, being a matter of degree,
/// as a danger.
void judge_carrying_on(const CandidateSource& source, Candidate& candidate) {
    const Outcome outcome = source.apply(candidate.changes);
    if (outcome.trial == nullptr) return; // refused with its own reason
    const streams::StreamRules& waste = source.solvents.waste;
    const streams::ReactivityGroups& groups = waste.compatibility.groups;
    const auto charged = charged_next(source, candidate.step, groups);
    const auto charged_anyway = [&](const streams::Participant& part) {
        return std::any_of(charged.begin(), charged.end(), [&](const streams::Participant& other) {
            return other.substance == part.substance;
        });
    };
    const streams::CompatibilityReport report = check_compatibility(
        participants_of(left_on_crude(*outcome.trial, candidate.step), groups), charged, waste.compatibility);
    std::vector<std::string> against;
    for (const streams::Meeting& meeting : report.meetings) {
        if (meeting.weight == streams::Meeting::Weight::noted || charged_anyway(meeting.one)) continue;
        const bool gas_or_worse =
            contains(meeting.codes, std::string("GT")) || contains(meeting.codes, std::string("E"));
        (gas_or_worse && is_grave(meeting.one, waste.local) ? against : candidate.dangers)
            .push_back(fmt::format("up to {} of {} left on the crude meets {} in the next step, which {}",
                                   grams_text(meeting.one.grams), meeting.one.name, meeting.other.name,
                                   consequences(meeting, waste.compatibility.chart)));
    }
    for (const std::string& name : report.not_assigned)
        candidate.dangers.push_back(name + ": what it does in the next step was not looked at");
    candidate.against = join(against, "; ");
}

} // namespace

void find_telescoping(const CandidateSource& source, std::vector<Candidate>& candidates) {
    const Route& route = source.route();
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        const Step& step = route.steps[s];
        const int index = static_cast<int>(s);
        if (index == source.assessment.flat().final_step() || !feeds_a_step(source.assessment.flat(), index))
            continue;
        Candidate candidate;
        candidate.changes = losses_shared_anew(step);
        std::vector<std::string> titles;
        // From the end on, so that the places of what is still to go stay what they are.
        for (auto stage = step.stages.rbegin(); stage != step.stages.rend(); ++stage)
            if (only_purifies(*stage)) {
                candidate.changes.push_back({stage->pointer, ""});
                titles.insert(titles.begin(), stage->title);
            }
        const bool charged = std::any_of(step.stages.begin(), step.stages.end(), [](const Stage& stage) {
            return only_purifies(stage) && !stage.charges.empty();
        });
        // Leaving out a drying alone saves nothing.
        if (!charged || titles.size() == step.stages.size()) continue;
        for (Assignment& change : notes_left_over(step))
            candidate.changes.push_back(std::move(change));
        candidate.what =
            fmt::format("carry the crude {} of the step {} on, without {}", step.product->name, step.id,
                        routeweigh::listed(titles)); // another file of this folder has a `listed` too
        candidate.question =
            fmt::format("Does {} have to be purified before the next step?", step.product->name);
        candidate.cautions = {"purity: what was left behind goes into the next pot and may react there or "
                              "stay in the end product",
                              "what the crude holds of liquor goes on with it; the next step may not bear "
                              "the solvent or the acid",
                              "how much product the crude holds is not known without its purification: weigh "
                              "it and take a spectrum"};
        candidate.step = index;
        judge_carrying_on(source, candidate);
        candidates.push_back(std::move(candidate));
    }
}

} // namespace routeweigh
