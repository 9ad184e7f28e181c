// SPDX-License-Identifier: MIT
#include "route/route_checks.hpp"

#include "base/index.hpp"
#include "base/text.hpp"
#include "input/locate.hpp"
#include "route/charge.hpp"
#include "route/check_report.hpp"
#include "route/given_amount.hpp"
#include "route/pot_checks.hpp"
#include "route/reaction_graph.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <set>
#include <span>

namespace routeweigh {
namespace {

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

bool charges(const Step& step, const Substance* substance) {
    return std::any_of(step.stages.begin(), step.stages.end(), [&](const Stage& stage) {
        return std::any_of(stage.charges.begin(), stage.charges.end(), [&](const Charge& charge) {
            return charge.material->component_of(*substance) != nullptr;
        });
    });
}

void check_steps(const Route& route, CheckReport& report) {
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
        for (const auto& part : step.overall.parts)
            if (part.coefficient < 0.0 && !charges(step, part.substance))
                report.error(
                    step.pointer + "/overall",
                    fmt::format("the overall equation uses up {}, which this step is not charged with",
                                part.substance->name));
    }
    if (!makers.contains(route.product))
        report.error("/product", fmt::format("no step makes {}", route.product->name));
}

void check_amounts(const Step& step, CheckReport& report) {
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
                if (const std::string fault = given_amount_fault(charge, reference); !fault.empty())
                    report.warning(charge.pointer + "/given_as",
                                   fault + ": correct \"given_as\", or leave it out");
            } catch (const ChargeError& error) {
                report.error(charge.pointer + "/amount", error.message);
            } catch (const QuantityError& error) {
                report.error(charge.pointer + "/amount", error.what());
            }
        }
}

void check_separations(const Step& step, CheckReport& report) {
    const std::set<const Substance*> held = substances_of(step);
    double declared = 0.0;
    bool any = false;
    std::set<std::string> names{step.rest, step.gas}, noted;
    std::map<std::string, const Separation*> first_into;
    for (const Stage& stage : step.stages)
        for (const Separation& separation : stage.separations) {
            names.insert(separation.to);
            const auto [first, fresh] = first_into.try_emplace(separation.to, &separation);
            if (!fresh && first->second->gives_vapour() != separation.gives_vapour())
                report.contradiction(
                    separation.pointer + "/to", first->second->pointer + "/to",
                    fmt::format("\"{}\" takes a liquid and a vapour: give them two names", separation.to));
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
    for (const StreamNote& note : step.streams) {
        if (!noted.insert(note.name).second)
            report.error(note.pointer + "/name", fmt::format("two notes on the stream \"{}\"", note.name));
        if (!names.contains(note.name))
            report.error(note.pointer + "/name",
                         fmt::format("no separation leads to a stream \"{}\"", note.name),
                         nearest(note.name, {names.begin(), names.end()}));
    }
    for (const Substance* gas : step.dissolved)
        if (!held.contains(gas))
            report.error(step.pointer + "/dissolved", fmt::format("the pot never holds {}", gas->name));
}

/// Whether the step is charged with the substance out of a bottle, and not only from another step.
bool buys(const Route& route, std::span<const ChargeSupply> supplies, int index, const Substance* substance) {
    const Step& step = route.steps[at(index)];
    for (std::size_t g = 0; g < step.stages.size(); ++g)
        for (std::size_t c = 0; c < step.stages[g].charges.size(); ++c)
            if (step.stages[g].charges[c].material->component_of(*substance) != nullptr &&
                std::none_of(supplies.begin(), supplies.end(), [&](const ChargeSupply& supply) {
                    return supply.step == index && at(supply.stage) == g && at(supply.charge) == c;
                }))
                return true;
    return false;
}

void check_reuse(const Route& route, CheckReport& report) {
    const std::vector<ChargeSupply> supplies = find_supplies(route);
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
        if (!charges(to, reuse.substance))
            report.error(reuse.pointer + "/to",
                         fmt::format("step \"{}\" charges no {}", to.id, reuse.substance->name));
        else if (!buys(route, supplies, reuse.to_step, reuse.substance))
            report.error(reuse.pointer + "/to",
                         fmt::format("step \"{}\" gets {} from the step that makes it, so no purchase of it "
                                     "could be saved",
                                     to.id, reuse.substance->name));
    }
}

void check_coproducts(const Route& route, CheckReport& report) {
    std::set<const Substance*> named;
    for (const Coproduct& coproduct : route.coproducts) {
        const std::string place = coproduct.pointer + "/substance", &name = coproduct.substance->name;
        if (!named.insert(coproduct.substance).second)
            report.error(place, fmt::format("{} is named twice", name));
        if (std::any_of(route.steps.begin(), route.steps.end(),
                        [&](const Step& step) { return step.product == coproduct.substance; }))
            report.error(place, fmt::format("{} is the product of a step, and no by-product", name));
        else if (std::none_of(route.steps.begin(), route.steps.end(), [&](const Step& step) {
                     return step.overall.coefficient_of(coproduct.substance) > 0.0;
                 }))
            report.error(place, fmt::format("no overall equation makes {}", name));
    }
}

} // namespace

Place place_of(const Route& route, const std::string& pointer) {
    if (!route.source) return {};
    const auto offset = locate(route.source->text, pointer);
    return place_at(*route.source, offset.value_or(0), pointer);
}

void check_route(const Route& route, Problems& problems) {
    CheckReport report(route, problems);
    check_steps(route, report);
    for (const Step& step : route.steps) {
        check_amounts(step, report);
        check_separations(step, report);
    }
    check_reuse(route, report);
    check_coproducts(route, report);
    check_graph(route, report);
    if (report.failed()) return; // what follows evaluates the route, which needs all of the above

    check_pots(route, report);
}

} // namespace routeweigh
