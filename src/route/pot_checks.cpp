// SPDX-License-Identifier: MIT
#include "route/pot_checks.hpp"

#include "base/index.hpp"
#include "base/text.hpp"
#include "route/flat_route.hpp"
#include "route/overall_equation.hpp"
#include "route/reaction_graph.hpp"

#include <fmt/core.h>

#include <cstddef>
#include <limits>
#include <map>

namespace routeweigh {
namespace {

/// Reactions as the compiled step sees them: started, bounded, without competition.
void check_extents(const Step& step, const FlatStep& flat, CheckReport& report) {
    bool formed = false;
    for (std::size_t g = 0; g < flat.stages.size(); ++g) {
        const Extents& extents = flat.stages[g].extents;
        formed = formed || extents.makes_product();
        for (const Separation& separation : step.stages[g].separations)
            if (!formed && separation.loss.value_or(0.0) > 0.0)
                report.error(separation.pointer + "/loss",
                             fmt::format("no {} is there yet that could be lost", step.product->name));
        const std::vector<Reaction>& reactions = step.stages[g].reactions;
        for (std::size_t r = 0; r < reactions.size(); ++r)
            if (!extents.started(static_cast<int>(r)))
                report.error(reactions[r].pointer + "/equation",
                             "nothing in the pot can start this reaction in this stage: what it uses is "
                             "charged or made only later");
        for (const Charge& charge : step.stages[g].charges)
            for (const Reaction& reaction : reactions)
                if (charge.as_used && reaction.conversion < 1.0 &&
                    charge.material->component_of(*reaction.of) != nullptr)
                    report.error(reaction.pointer + "/of",
                                 fmt::format("{} is taken as used, so no amount of it is there that a "
                                             "conversion could count from: count another reactant",
                                             reaction.of->name));
        if (extents.unbounded())
            report.error(
                step.stages[g].pointer + "/reactions",
                "these reactions undo each other and have no end: list only the direction that runs");
        if (const auto& competition = extents.competition()) {
            const std::string substance = competition->substance < 0
                                              ? "a substance"
                                              : flat.substances[at(competition->substance)]->name;
            report.contradiction(
                reactions[at(competition->first)].pointer, reactions[at(competition->second)].pointer,
                fmt::format("both reactions want {} and there is not enough for both: give them a "
                            "\"priority\" or a \"split\"",
                            substance));
        }
    }
}

void check_yield(const Step& step, const StepResult& result, CheckReport& report) {
    const double molar_mass = step.product->molar_mass;
    if (!(result.made > 0.0))
        report.error(step.pointer + "/product",
                     fmt::format("the reactions of this step never make {}", step.product->name));
    else if (result.isolated > result.made * (1.0 + 1e-9))
        report.error(
            step.isolated.pointer,
            fmt::format("{} g isolated is more than the {} g that can form: look for a wet or impure "
                        "product, a wrong limiting reagent, or a wrong mass",
                        significant(result.isolated * molar_mass, 4),
                        significant(result.made * molar_mass, 4)));
}

/// A solvent that reacts in the role of a solvent would be left out of the figures that count reactants.
void check_reactants(const FlatRoute& flat, int index, double theory, CheckReport& report) {
    const Step& step = flat.route().steps[at(index)];
    for (const auto& part : step.overall.parts) {
        if (part.coefficient >= 0.0) continue;
        double supply = 0.0; // mol
        for (const Inflow& inflow : flat.inflows_of(index)) {
            if (inflow.substance != part.substance || !(inflow.reactant || inflow.fed_by >= 0)) continue;
            if (inflow.as_used)
                supply = std::numeric_limits<double>::infinity();
            else
                supply +=
                    flat.nominal().charged[at(inflow.slot)] * inflow.fraction / part.substance->molar_mass;
        }
        const double needed = theory * -part.coefficient / step.overall.coefficient_of(step.product);
        if (supply < needed * (1.0 - 1e-6))
            report.warning(step.overall.pointer,
                           fmt::format("the theoretical yield takes {} mol of {}, and charges that count as "
                                       "reactant bring {} mol: a solvent that reacts has the role "
                                       "\"reacting solvent\"",
                                       significant(needed, 3), part.substance->name, significant(supply, 3)));
    }
}

/// How often each step is run for one run of the last one.
void check_scale(const Route& route, const FlatRoute& flat, const Evaluation& evaluation,
                 CheckReport& report) {
    std::vector<double> ratios(flat.scale_plan().feeds().size(), 0.0), runs(route.steps.size());
    for (const Inflow& inflow : flat.inflows())
        if (inflow.fed_by >= 0)
            ratios[at(inflow.feed)] +=
                flat.nominal().charged[at(inflow.slot)] /
                (evaluation.steps[at(inflow.fed_by)].isolated * inflow.substance->molar_mass);
    if (!flat.scale_plan().solve(ratios, runs)) {
        report.error("/steps",
                     "the steps feed each other in a loop that uses up at least as much as it makes");
        return;
    }
    constexpr double most = 1e12; // a longer chain of misfits would leave the range of numbers
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        if (!(runs[s] > 0.0))
            report.error(route.steps[s].pointer,
                         fmt::format("no step uses {}, which this step makes", route.steps[s].product->name));
        else if (runs[s] > most || runs[s] < 1.0 / most)
            report.error(
                route.steps[s].pointer,
                fmt::format("this step would be run {:.1g} times for one run of the last step: look at "
                            "the amounts that link the steps",
                            runs[s]));
    }
}

void check_overall(const Step& step, CheckReport& report) {
    const OverallProof proof = prove_overall(step);
    if (!proof.proved) {
        report.error(step.pointer + "/overall", "this equation is no sum of the reactions of the step in "
                                                "which every transient cancels: a reaction "
                                                "is missing, or the equation counts something else");
        return;
    }
    if (proof.best_atom_economy > proof.atom_economy + 5e-4)
        report.warning(
            step.pointer + "/overall",
            fmt::format(
                "the same reactions can be added up to an atom economy of {:.1f} % where this equation "
                "has {:.1f} %: excess is written as stoichiometry, or salts are written another way",
                100 * proof.best_atom_economy, 100 * proof.atom_economy));
}

} // namespace

void check_graph(const Route& route, CheckReport& report) {
    const ReactionGraph graph = build_reaction_graph(route);
    struct Unfed {
        std::vector<std::string> missing, looped;
    };
    std::map<int, Unfed> unfed; // by reaction that nothing feeds: what it waits for
    for (const GraphEdge& edge : graph.edges) {
        const GraphSubstance& substance = graph.substances[at(edge.substance)];
        if (edge.coefficient > 0.0 || substance.reached) continue;
        Unfed& waits = unfed[edge.reaction];
        (substance.role == GraphRole::missing ? waits.missing : waits.looped)
            .push_back(substance.substance->name);
    }
    for (const auto& [index, waits] : unfed) {
        const auto& [missing, looped] = waits;
        const GraphReaction& vertex = graph.reactions[at(index)];
        const Reaction& reaction =
            route.steps[at(vertex.step)].stages[at(vertex.stage)].reactions[at(vertex.reaction)];
        if (!missing.empty())
            report.error(reaction.pointer + "/equation",
                         fmt::format("nothing supplies {}: charge it, or list the reaction that makes it",
                                     join(missing, ", ")));
        else
            report.error(
                reaction.pointer + "/equation",
                fmt::format("nothing starts this loop: {} is made only from itself; a trace that starts the "
                            "chain is a charge with the role \"trace\"",
                            join(looped, ", ")));
    }
}

void check_pots(const Route& route, CheckReport& report) {
    const FlatRoute flat(route);
    for (std::size_t s = 0; s < route.steps.size(); ++s)
        check_extents(route.steps[s], flat.steps()[s], report);
    if (report.failed()) return;
    const Evaluation evaluation = flat.evaluate(flat.nominal());
    for (std::size_t s = 0; s < route.steps.size(); ++s)
        check_yield(route.steps[s], evaluation.steps[s], report);
    if (!report.failed()) check_scale(route, flat, evaluation, report);
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        check_overall(route.steps[s], report);
        check_reactants(flat, static_cast<int>(s), evaluation.steps[s].theory, report);
    }
}

} // namespace routeweigh
