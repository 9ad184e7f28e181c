// SPDX-License-Identifier: MIT
// A neat solvent replaced, volume for volume, by another of its family, in all stages of a step in which it
// does the same: a change of one stage alone would add a solvent to the step and take none away. Which of
// them brings less hazard is for the evaluation to say: it keeps the one with the lowest hazard score, and
// none that is not lower.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"

#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

bool named_in(const SubstanceEquation& equation, const Substance* substance) {
    return std::any_of(equation.parts.begin(), equation.parts.end(),
                       [&](const auto& part) { return part.substance == substance; });
}

/// The solvent reacts in the step or is handed from step to step; then it is more than a solvent.
bool has_other_part(const Route& route, const Step& step, const Substance* solvent) {
    if (named_in(step.overall, solvent) || step.product == solvent || step.reference == solvent) return true;
    for (const Stage& stage : step.stages)
        for (const Reaction& reaction : stage.reactions)
            if (named_in(reaction.equation, solvent)) return true;
    return std::any_of(route.reuse.begin(), route.reuse.end(),
                       [&](const Reuse& reuse) { return reuse.substance == solvent; });
}

/// Separations that name the solvent would no longer know what to do with the other one.
bool named_in_separations(const Step& step, const Substance* solvent) {
    for (const Stage& stage : step.stages)
        for (const Separation& separation : stage.separations)
            for (const Separation::Share& share : separation.shares)
                if (share.substance == solvent) return true;
    return false;
}

/// What a liquid would meet in the pot, as the reactivity charts see it; the pot without the solvent itself.
streams::CompatibilityReport meetings(const CandidateSource& source, const ChargePlace& place,
                                      const Substance& solvent, const Substance& liquid) {
    streams::Composition pot, bottle;
    const auto inflows = source.assessment.flat().inflows();
    for (std::size_t i = 0; i < inflows.size(); ++i)
        if (inflows[i].step == place.step_index && inflows[i].substance != &solvent)
            pot.add(*inflows[i].substance, source.assessment.evaluation().in[i]);
    pot.add(*place.step->product, 1.0);
    bottle.add(liquid, place.grams);
    const streams::CompatibilityRules& rules = source.solvents.waste.compatibility;
    return check_compatibility(participants_of(bottle, rules.groups), participants_of(pot, rules.groups),
                               rules);
}

/// True unless the other solvent meets nothing in the pot worse than the solvent itself does.
bool brings_conflict(const CandidateSource& source, const ChargePlace& place, const Substance& solvent,
                     const Substance& other) {
    const auto now = meetings(source, place, solvent, solvent),
               then = meetings(source, place, solvent, other);
    if (then.not_assigned.size() > now.not_assigned.size()) return true;
    return std::any_of(then.meetings.begin(), then.meetings.end(), [&](const streams::Meeting& meeting) {
        if (meeting.codes.empty() || meeting.trace) return false;
        return std::none_of(now.meetings.begin(), now.meetings.end(), [&](const streams::Meeting& old) {
            return old.other.name == meeting.other.name &&
                   std::includes(old.codes.begin(), old.codes.end(), meeting.codes.begin(),
                                 meeting.codes.end());
        });
    });
}

std::vector<std::string> cautions_for_exchange(const ChargePlace& place, const Substance& other) {
    std::vector<std::string> cautions{
        "reactivity: the charts found no conflict that the old solvent had not, which clears nothing; look "
        "up "
        "each reagent of the step beside it",
        "solubility: try what dissolves in it, cold and hot, before anything else"};
    if (!other.boiling_point)
        cautions.push_back(fmt::format("boiling point of {}: not in the catalogue", other.name));
    else if (place.stage->temperature && *other.boiling_point < place.stage->temperature->celsius())
        cautions.push_back(
            fmt::format("boiling point: {} boils at {:.0f} degC and the stage runs at {:.0f} degC",
                        other.name, *other.boiling_point, place.stage->temperature->celsius()));
    else
        cautions.push_back(
            fmt::format("boiling point: {:.0f} degC, which changes how it is driven off and what "
                        "temperature a boiling mixture has",
                        *other.boiling_point));
    if (place.role() == "extraction")
        cautions.emplace_back("separation: it may be the upper layer where the other was the lower");
    return cautions;
}

/// Neat solvents that may be exchanged, the charges of one in the same role of a step together.
std::vector<std::vector<ChargePlace>> exchangeable(const CandidateSource& source) {
    std::vector<std::vector<ChargePlace>> groups;
    for (const ChargePlace& place : charge_places(source.assessment)) {
        const Charge& charge = *place.charge;
        if (!charge.role->solvent || charge.role->reactant || !charge.material->is_neat() ||
            !charge.material->density)
            continue;
        const Substance& solvent = *charge.material->components.front().substance;
        if (has_other_part(source.route(), *place.step, &solvent) ||
            named_in_separations(*place.step, &solvent))
            continue;
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
            return group.front().step == place.step && group.front().charge->role == charge.role &&
                   group.front().charge->material == charge.material;
        });
        if (same != groups.end())
            same->push_back(place);
        else
            groups.push_back({place});
    }
    return groups;
}

/// The step holds the solvent in other charges too.
bool stays_elsewhere(const CandidateSource& source, const std::vector<ChargePlace>& places) {
    const Substance& solvent = *places.front().charge->material->components.front().substance;
    const auto all = charge_places(source.assessment);
    return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [&](const ChargePlace& place) {
               return place.step == places.front().step &&
                      place.charge->material->component_of(solvent) != nullptr;
           })) > places.size();
}

} // namespace

void find_other_solvent(const CandidateSource& source, std::vector<Candidate>& candidates) {
    const Route& route = source.route();
    for (const std::vector<ChargePlace>& places : exchangeable(source)) {
        const ChargePlace& first = places.front();
        const Substance& solvent = *first.charge->material->components.front().substance;
        for (const Substance* other : source.solvents.families.others(solvent, first.role())) {
            // What is a mixture differs from bottle to bottle, and so do its hazards.
            if (!other->density || other->is_mixture || brings_conflict(source, first, solvent, *other))
                continue;
            Candidate candidate;
            std::vector<std::string> amounts;
            for (const ChargePlace& place : places) {
                const double grams = place.grams / *place.charge->material->density * *other->density;
                amounts.push_back(fmt::format("{} for {}", grams_text(grams), grams_text(place.grams)));
                candidate.changes.push_back({place.charge->pointer + "/material", json_quoted(other->name)});
                candidate.changes.push_back(
                    {place.charge->pointer + "/amount", json_quoted(fmt::format("{} g", grams))});
                for (const std::string& caution : cautions_for_exchange(place, *other))
                    add_once(candidate.cautions, caution);
            }
            if (stays_elsewhere(source, places))
                candidate.cautions.push_back(fmt::format(
                    "count: {} stays in other charges of the step; the most of each solvent is "
                    "counted, whatever the stage, so that both together may look worse than either",
                    solvent.name));
            const std::string purpose = purpose_of(places, route);
            candidate.what = fmt::format("take {} in place of {} ({}), volume for volume: {}", other->name,
                                         solvent.name, purpose, join(amounts, ", "));
            candidate.question =
                fmt::format("Which other solvent might serve in place of {} ({}), and what would it "
                            "bring with it?",
                            solvent.name, purpose);
            candidate.step = first.step_index;
            candidate.alternatives = first.charge->pointer;
            candidates.push_back(std::move(candidate));
        }
    }
}

} // namespace routeweigh
