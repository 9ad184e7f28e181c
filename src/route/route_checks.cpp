// SPDX-License-Identifier: MIT
#include "route/route_checks.hpp"

#include "base/index.hpp"
#include "base/text.hpp"
#include "input/locate.hpp"
#include "route/charge.hpp"
#include "route/flat_route.hpp"
#include "route/overall_equation.hpp"
#include "route/reaction_graph.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <set>

namespace routeweigh {
namespace {

/// What a mixed list of problems needs to be told: where, and how bad.
class Report {
  public:
    Report(const Route& route, Problems& problems) : route_(route), problems_(problems) {}
    void error(const std::string& pointer, std::string message, std::string nearest = {}) {
        failed_ = true;
        problems_.add(
            {Severity::error, std::move(message), place_of(route_, pointer), {}, std::move(nearest)});
    }
    void contradiction(const std::string& pointer, const std::string& second, std::string message) {
        failed_ = true;
        problems_.add(
            {Severity::error, std::move(message), place_of(route_, pointer), place_of(route_, second), {}});
    }
    void warning(const std::string& pointer, std::string message) {
        problems_.add({Severity::warning, std::move(message), place_of(route_, pointer), {}, {}});
    }
    bool failed() const { return failed_; }

  private:
    const Route& route_;
    Problems& problems_;
    bool failed_ = false;
};

/// Substances that the pot of a step can ever hold.
std::set<const Substance*> substances_of(const Step& step) {
    std::set<const Substance*> held{step.product};
    for (const Stage& stage : step.stages) {
        for (const Charge& charge : stage.charges)
            for (const Component& component : charge.material->components)
                held.insert(component.substance);
        for (const Reaction& reaction : stage.reactions)
            for (const auto& part : reaction.equation.parts)
                held.insert(part.substance);
    }
    return held;
}

void check_steps(const Route& route, Report& report) {
    std::map<std::string, const Step*> ids;
    std::map<const Substance*, const Step*> makers;
    for (const Step& step : route.steps) {
        if (const auto [other, fresh] = ids.try_emplace(step.id, &step); !fresh)
            report.contradiction(step.pointer + "/id", other->second->pointer + "/id",
                                 fmt::format("two steps are called \"{}\"", step.id));
        if (const auto [other, fresh] = makers.try_emplace(step.product, &step); !fresh)
            report.contradiction(step.pointer + "/product", other->second->pointer + "/product",
                                 fmt::format("two steps make {}: write alternative ways as separate routes",
                                             step.product->name));
        if (step.stages.empty()) report.error(step.pointer + "/stages", "a step needs at least one stage");
        if (step.overall.coefficient_of(step.product) <= 0.0)
            report.error(step.pointer + "/overall",
                         fmt::format("the overall equation does not make {}", step.product->name));
    }
    if (!makers.contains(route.product))
        report.error("/product", fmt::format("no step makes {}", route.product->name));
}

void check_amounts(const Step& step, Report& report) {
    double reference = std::nan("");
    try {
        reference = reference_moles(step);
        if (!(reference > 0.0))
            report.error(step.pointer + "/reference", "the reference is charged with amount 0");
    } catch (const ChargeError& error) {
        report.error(step.pointer + "/reference",
                     fmt::format("{} ({})", error.message, step.reference->name));
    }
    for (const Stage& stage : step.stages)
        for (const Charge& charge : stage.charges) {
            if (charge.as_used) continue;
            try {
                (void)grams_of(charge, std::isnan(reference) ? 1.0 : reference);
            } catch (const ChargeError& error) {
                report.error(charge.pointer + "/amount", error.message);
            } catch (const QuantityError& error) {
                report.error(charge.pointer + "/amount", error.what());
            }
        }
}

void check_separations(const Step& step, Report& report) {
    const std::set<const Substance*> held = substances_of(step);
    double declared = 0.0;
    bool any = false;
    std::set<std::string> names{step.rest, step.gas};
    for (const Stage& stage : step.stages)
        for (const Separation& separation : stage.separations) {
            names.insert(separation.to);
            any = any || separation.loss;
            declared += separation.loss.value_or(0.0);
            const std::string list =
                separation.pointer + (separation.lists_what_stays ? "/keeps" : "/leaves");
            for (const Separation::Share& share : separation.shares) {
                if (!held.contains(share.substance))
                    report.error(list, fmt::format("the pot never holds {}", share.substance->name));
                if (share.substance == step.product &&
                    (!separation.lists_what_stays || share.fraction != 1.0))
                    report.error(
                        list, fmt::format("{} is the product of the step and always stays: state its loss in "
                                          "\"loss\" and its mass in \"isolated\"",
                                          share.substance->name));
            }
        }
    if (any && std::abs(declared - 1.0) > 1e-6)
        report.error(step.pointer,
                     fmt::format("the shares in \"loss\" add up to {:g} %, not to 100 %", 100 * declared));
    for (const StreamNote& note : step.streams)
        if (!names.contains(note.name))
            report.error(note.pointer + "/name",
                         fmt::format("no separation leads to a stream \"{}\"", note.name),
                         nearest(note.name, {names.begin(), names.end()}));
    for (const Substance* gas : step.dissolved)
        if (!held.contains(gas))
            report.error(step.pointer + "/dissolved", fmt::format("the pot never holds {}", gas->name));
}

void check_graph(const Route& route, Report& report) {
    const ReactionGraph graph = build_reaction_graph(route);
    for (std::size_t r = 0; r < graph.reactions.size(); ++r) {
        const GraphReaction& vertex = graph.reactions[r];
        const Reaction& reaction =
            route.steps[at(vertex.step)].stages[at(vertex.stage)].reactions[at(vertex.reaction)];
        if (vertex.reached) continue;
        std::vector<std::string> missing, looped;
        for (const GraphEdge& edge : graph.edges) {
            if (at(edge.reaction) != r || edge.coefficient > 0.0 ||
                graph.substances[at(edge.substance)].reached)
                continue;
            const GraphSubstance& substance = graph.substances[at(edge.substance)];
            (substance.role == GraphRole::missing ? missing : looped).push_back(substance.substance->name);
        }
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

void check_reuse(const Route& route, Report& report) {
    for (const Reuse& reuse : route.reuse) {
        const Step& from = route.steps[at(reuse.from_step)];
        std::set<std::string> names{from.rest, from.gas};
        for (const Stage& stage : from.stages)
            for (const Separation& separation : stage.separations)
                names.insert(separation.to);
        if (!names.contains(reuse.from_stream))
            report.error(reuse.pointer + "/from/stream",
                         fmt::format("step \"{}\" has no stream \"{}\"", from.id, reuse.from_stream),
                         nearest(reuse.from_stream, {names.begin(), names.end()}));
        if (!substances_of(from).contains(reuse.substance))
            report.error(reuse.pointer + "/substance",
                         fmt::format("step \"{}\" never holds {}", from.id, reuse.substance->name));
        const Step& to = route.steps[at(reuse.to_step)];
        const bool charged = std::any_of(to.stages.begin(), to.stages.end(), [&](const Stage& stage) {
            return std::any_of(stage.charges.begin(), stage.charges.end(), [&](const Charge& charge) {
                return charge.material->component_of(*reuse.substance) != nullptr;
            });
        });
        if (!charged)
            report.error(reuse.pointer + "/to",
                         fmt::format("step \"{}\" charges no {}", to.id, reuse.substance->name));
    }
}

/// Reactions as the compiled step sees them: started, bounded, without competition.
void check_extents(const Step& step, const FlatStep& flat, Report& report) {
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

void check_yield(const Route& route, const FlatRoute& flat, const Evaluation& evaluation, Report& report) {
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        const Step& step = route.steps[s];
        const StepResult& result = evaluation.steps[s];
        const double molar_mass = step.product->molar_mass;
        if (!(result.made > 0.0)) {
            report.error(step.pointer + "/product",
                         fmt::format("the reactions of this step never make {}", step.product->name));
            continue;
        }
        if (result.isolated > result.made * (1.0 + 1e-9))
            report.error(
                step.isolated.pointer,
                fmt::format("{} g isolated is more than the {} g that can form: look for a wet or impure "
                            "product, a wrong limiting reagent, or a wrong mass",
                            significant(result.isolated * molar_mass, 4),
                            significant(result.made * molar_mass, 4)));
        if (!(result.scale > 0.0))
            report.error(step.pointer,
                         fmt::format("no step uses {}, which this step makes", step.product->name));
    }
    std::vector<double> ratios(flat.scale_plan().feeds().size(), 0.0), runs(route.steps.size());
    for (const Inflow& inflow : flat.inflows())
        if (inflow.fed_by >= 0)
            ratios[at(inflow.feed)] +=
                flat.nominal().charged[at(inflow.slot)] /
                (evaluation.steps[at(inflow.fed_by)].isolated * inflow.substance->molar_mass);
    if (!flat.scale_plan().solve(ratios, runs))
        report.error("/steps",
                     "the steps feed each other in a loop that uses up at least as much as it makes");
}

void check_overall(const Step& step, Report& report) {
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

Place place_of(const Route& route, const std::string& pointer) {
    if (!route.source) return {};
    const auto offset = locate(route.source->text, pointer);
    return place_at(*route.source, offset.value_or(0), pointer);
}

void check_route(const Route& route, Problems& problems) {
    Report report(route, problems);
    check_steps(route, report);
    for (const Step& step : route.steps) {
        check_amounts(step, report);
        check_separations(step, report);
    }
    check_reuse(route, report);
    check_graph(route, report);
    if (report.failed()) return; // what follows evaluates the route, which needs all of the above

    const FlatRoute flat(route);
    for (std::size_t s = 0; s < route.steps.size(); ++s)
        check_extents(route.steps[s], flat.steps()[s], report);
    if (report.failed()) return;
    check_yield(route, flat, flat.evaluate(flat.nominal()), report);
    for (const Step& step : route.steps)
        check_overall(step, report);
}

} // namespace routeweigh
