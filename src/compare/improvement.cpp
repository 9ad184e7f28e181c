// SPDX-License-Identifier: MIT
#include "compare/improvement.hpp"

#include "compare/break_even.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace routeweigh {
namespace {

constexpr double visible_decades = 0.005; // less is not printed and no hazard added
constexpr double visible_rest = 1e-3;     // g per g of product: less is left over in every flask
constexpr double visible_share = 1e-9;    // of the figure: less is rounding

double gain_of(const FigurePick& figure, double before, double after) {
    return figure.better() == Better::higher ? after - before : before - after;
}

std::vector<AddedHazard> added_hazards(const HazardScheme& scheme, const HazardValues& before,
                                       const HazardValues& after) {
    std::vector<AddedHazard> added;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
        for (std::size_t p = 0; p < place_count; ++p) {
            if (!scheme.places[p].scored) continue;
            const std::size_t cell = cell_index(e, static_cast<HazardPlace>(p));
            const EndpointRule& rule = scheme.endpoints[e];
            const double was = decades(rule, before.value[cell]), is = decades(rule, after.value[cell]);
            if (is - was > visible_decades) added.push_back({rule.title, scheme.places[p].title, was, is});
        }
    return added;
}

/// g in all streams by substance, in the reading of the yield that leaves more.
std::map<const Substance*, double> left_in_streams(const FlatRoute& flat, const Evaluation& evaluation) {
    std::map<const Substance*, double> left, unreacted;
    for (const FlatStream& stream : flat.streams()) {
        const FlatStep& step = flat.steps()[static_cast<std::size_t>(stream.step)];
        for (std::size_t s = 0; s < step.substances.size(); ++s) {
            const std::size_t outflow = static_cast<std::size_t>(stream.first_outflow) + s;
            left[step.substances[s]] += evaluation.out[outflow];
            unreacted[step.substances[s]] += evaluation.out_unreacted[outflow];
        }
    }
    for (auto& [substance, grams] : left)
        grams = std::max(grams, unreacted[substance]);
    return left;
}

/// Of all but solvents: a new one is no rest, and a change names it.
std::vector<LeftOver> newly_left_over(const Assessment& before, const Trial& after) {
    std::map<const Substance*, double> was = left_in_streams(before.flat(), before.evaluation());
    const Evaluation& evaluation = after.values().evaluation;
    std::map<const Substance*, double> is = left_in_streams(after.figures().flat(), evaluation);
    for (const Inflow& inflow : after.figures().flat().inflows())
        if (inflow.carrier || inflow.role->solvent) is.erase(inflow.substance);
    std::vector<LeftOver> found;
    for (const auto& [substance, grams] : is)
        if (grams - was[substance] > visible_rest * evaluation.product && grams > 2.0 * was[substance])
            found.push_back({substance->name, was[substance], grams});
    std::sort(found.begin(), found.end(), [](const LeftOver& a, const LeftOver& b) {
        return a.after != b.after ? a.after > b.after : a.substance < b.substance;
    });
    return found;
}

/// The yield of one step of the changed route at which the figure is again what it was before.
std::optional<double> yield_at_par(const Trial& trial, int step, double yield, const FigurePick& figure,
                                   double before) {
    const auto index = static_cast<std::size_t>(step);
    Inputs inputs = trial.figures().flat().nominal();
    if (index >= inputs.isolated.size()) return {};
    const double written = inputs.isolated[index];
    RouteFigures::Values values;
    const Response response = [&](double share) {
        inputs.isolated[index] = share * written;
        if (share <= 0.0) return std::nan("");
        trial.figures().evaluate(inputs, values);
        return figure.value(values);
    };
    const BreakEvenSearch search = find_break_even(response, before, 0.0, 1.0);
    if (search.roots.empty()) return {};
    return yield * search.roots.back();
}

double yield_of(const Evaluation& evaluation, int step) {
    const StepResult& result = evaluation.steps[static_cast<std::size_t>(step)];
    return result.isolated / result.theory;
}

bool meet(const Candidate& first, const Candidate& second) {
    const auto within = [](const std::string& inner, const std::string& outer) {
        return inner == outer || inner.starts_with(outer + '/');
    };
    return std::any_of(first.changes.begin(), first.changes.end(), [&](const Assignment& a) {
        return std::any_of(second.changes.begin(), second.changes.end(), [&](const Assignment& b) {
            // Appending to a list meets nothing, unless both append the same.
            if (a.pointer.ends_with("/-") && b.pointer.ends_with("/-")) return a.value == b.value;
            return within(a.pointer, b.pointer) || within(b.pointer, a.pointer);
        });
    });
}

/// What is taken out goes last, in the order in which each candidate takes it out, so that no place moves
/// before a value is put there.
std::vector<Assignment> together(const Candidate& first, const Candidate& second) {
    std::vector<Assignment> changes = first.changes;
    changes.insert(changes.end(), second.changes.begin(), second.changes.end());
    std::stable_partition(changes.begin(), changes.end(),
                          [](const Assignment& change) { return !change.value.empty(); });
    return changes;
}

void try_pairs(Improvements& result, const Apply& apply, std::size_t pairs_of) {
    const std::size_t count = std::min(pairs_of, result.ranked.size());
    for (std::size_t i = 0; i < count; ++i)
        for (std::size_t j = i + 1; j < count; ++j) {
            const Improvement &first = result.ranked[i], &second = result.ranked[j];
            if (meet(first.candidate, second.candidate)) continue;
            ++result.pairs_tried;
            Interaction pair{i, j, 0.0, first.after - first.before + second.after - second.before, {}};
            const Outcome outcome = apply(together(first.candidate, second.candidate));
            if (outcome.trial == nullptr)
                pair.refused = outcome.refused;
            else
                pair.joint = result.figure.value(outcome.trial->values()) - result.value;
            const bool differs = std::abs(pair.joint - pair.sum) > 1e-6 * std::abs(pair.sum);
            if (outcome.trial == nullptr || differs) result.interactions.push_back(std::move(pair));
        }
    std::stable_sort(result.interactions.begin(), result.interactions.end(),
                     [](const Interaction& a, const Interaction& b) {
                         return std::abs(a.joint - a.sum) > std::abs(b.joint - b.sum);
                     });
}

/// Whether an alternative brings less hazard than all before it; then it takes the place of the last such.
bool best_so_far(const Candidate& candidate, const Outcome& outcome, const Assessment& assessment,
                 std::map<std::string, double>& best, Improvements& result) {
    const HazardScore& score = outcome.trial->values().score;
    const double now = assessment.values().score.value;
    const auto found = best.try_emplace(candidate.alternatives, now).first;
    if (score.ranked() < assessment.values().score.ranked() || !(score.value < found->second)) return false;
    found->second = score.value;
    for (auto* list : {&result.ranked, &result.no_help})
        std::erase_if(*list, [&](const Improvement& entry) {
            return entry.candidate.alternatives == candidate.alternatives;
        });
    return true;
}

} // namespace

Improvements find_improvements(const CandidateSource& source, const FigurePick& figure,
                               std::size_t pairs_of) {
    const Assessment& assessment = source.assessment;
    const double before = figure.value(assessment.values());
    Improvements result{figure, before, figure.ratio(assessment.totals()), {}, {}, {}, {}, 0};
    std::map<std::string, double> best; // hazard score by set of alternatives
    for (Candidate& candidate : find_candidates(source)) {
        if (!candidate.against.empty()) {
            result.refused.push_back({candidate, candidate.against});
            continue;
        }
        const Outcome outcome = source.apply(candidate.changes);
        if (outcome.trial == nullptr) {
            result.refused.push_back({std::move(candidate), outcome.refused});
            continue;
        }
        if (!candidate.alternatives.empty() && !best_so_far(candidate, outcome, assessment, best, result))
            continue;
        const RouteFigures::Values& values = outcome.trial->values();
        Improvement entry;
        entry.before = before;
        entry.after = figure.value(values);
        entry.ratio = figure.ratio(values.totals);
        entry.gain = gain_of(figure, before, entry.after);
        entry.added =
            added_hazards(assessment.rules().hazard.score, assessment.values().hazard, values.hazard);
        entry.left_over = newly_left_over(assessment, *outcome.trial);
        entry.yield = yield_of(values.evaluation, candidate.step);
        const bool helps = entry.gain > visible_share * std::abs(before);
        if (helps)
            entry.yield_at_par = yield_at_par(*outcome.trial, candidate.step, entry.yield, figure, before);
        entry.candidate = std::move(candidate);
        (helps ? result.ranked : result.no_help).push_back(std::move(entry));
    }
    std::stable_sort(result.ranked.begin(), result.ranked.end(),
                     [](const Improvement& a, const Improvement& b) { return a.gain > b.gain; });
    try_pairs(result, source.apply, pairs_of);
    return result;
}

} // namespace routeweigh
