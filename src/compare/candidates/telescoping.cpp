// SPDX-License-Identifier: MIT
// An intermediate carried on as crude: its step ends before the purification, and the next step takes what
// there is.
#include "base/text.hpp"
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"

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
        candidates.push_back(std::move(candidate));
    }
}

} // namespace routeweigh
