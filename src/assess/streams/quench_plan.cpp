// SPDX-License-Identifier: MIT
#include "assess/streams/quench_plan.hpp"

#include "assess/streams/quench_need.hpp"
#include "assess/streams/quench_words.hpp"
#include "base/index.hpp"

#include <algorithm>

namespace routeweigh::streams {
namespace {

constexpr double close_enough = 1e-6; // share of what is needed; a quench of exactly the need is enough

/// What is planned for a step, by substance, from the charges with the role "quench".
std::vector<PlannedQuench> planned_in(int step, const FlatRoute& flat, const Evaluation& evaluation,
                                      double runs, const QuenchNeed& nominal, const QuenchNeed& unreacted,
                                      const QuenchTable& table) {
    const auto suits = [&](const Reducer& reducer) {
        if (reducer.only.empty()) return true;
        for (const QuenchNeed* need : {&nominal, &unreacted})
            for (const LeftToDestroy& left : need->oxidisers)
                if (std::find(reducer.only.begin(), reducer.only.end(), left.row->species) ==
                    reducer.only.end())
                    return false;
        return true;
    };
    std::vector<PlannedQuench> planned;
    for (std::size_t i = 0; i < flat.inflows().size(); ++i) {
        const Inflow& inflow = flat.inflows()[i];
        if (inflow.step != step || inflow.role->name != "quench" || inflow.carrier) continue;
        const Charge& charge =
            flat.route().steps[at(step)].stages[at(inflow.stage)].charges[at(inflow.charge)];
        PlannedQuench one{inflow.substance,        table.reducer(inflow.substance->id),
                          evaluation.in[i] / runs, 0,
                          charge.material->name,   0,
                          inflow.fraction,         charge.material->density.value_or(0)};
        if (one.reducer != nullptr && !suits(*one.reducer)) one.reducer = nullptr;
        if (one.reducer != nullptr)
            one.electrons = one.grams / one.reducer->molar_mass * one.reducer->electrons;
        one.grams_of_material = one.mass_fraction > 0 ? one.grams / one.mass_fraction : 0;
        planned.push_back(one);
    }
    return planned;
}

QuenchPlan::Verdict judge(const QuenchPlan& plan, const QuenchTable& table) {
    using Verdict = QuenchPlan::Verdict;
    const double least = std::min(plan.nominal.electrons, plan.unreacted.electrons);
    const double most = std::max(plan.nominal.electrons, plan.unreacted.electrons);
    const bool none = plan.planned.empty();
    if (most <= 0 && none) return Verdict::nothing_to_destroy;
    if (none) return Verdict::none_planned;
    if (plan.planned_electrons <= 0 && most > 0) return Verdict::wrong_kind;
    if (plan.planned_electrons < least * (1 - close_enough)) return Verdict::too_little;
    if (plan.planned_electrons < most * (1 - close_enough)) return Verdict::full_conversion_only;
    if (plan.planned_electrons > most * (1 + table.excess_high + close_enough)) return Verdict::too_much;
    return Verdict::enough;
}

/// Which reducer is short, and by how many grams.
void size_the_gap(QuenchPlan& plan, const QuenchTable& table) {
    const double most = std::max(plan.nominal.electrons, plan.unreacted.electrons);
    const double missing = std::max(0.0, most - plan.planned_electrons);
    const PlannedQuench* planned = nullptr;
    for (const PlannedQuench& one : plan.planned)
        if (one.reducer != nullptr && planned == nullptr) planned = &one;
    const Reducer* reducer = planned != nullptr ? planned->reducer : table.reducer("sodium-bisulfite");
    if (reducer == nullptr) return;
    plan.extra = missing / reducer->electrons * reducer->molar_mass;
    plan.extra_of = planned != nullptr ? planned->substance->name : "sodium hydrogensulfite";
    if (planned != nullptr && planned->mass_fraction > 0)
        plan.extra_material = plan.extra / planned->mass_fraction;
}

double sulfur_dioxide_left(const QuenchPlan& plan, const QuenchTable& table) {
    double electrons_left =
        plan.planned_electrons - std::min(plan.nominal.electrons, plan.unreacted.electrons);
    double litres = 0;
    for (const PlannedQuench& one : plan.planned) {
        if (one.reducer == nullptr || electrons_left <= 0) continue;
        const double left = std::min(electrons_left, one.electrons) / one.reducer->electrons;
        litres += left * one.reducer->sulfur_dioxide * table.litres_per_mol;
        electrons_left -= one.electrons;
    }
    return litres;
}

/// The equations are written with hydrogensulfite; another reducer makes another amount of acid.
void count_acid_of_planned_reducer(QuenchPlan& plan, const QuenchTable& table) {
    const Reducer* written = table.reducer("sodium-bisulfite");
    for (const PlannedQuench& one : plan.planned) {
        if (one.reducer == nullptr || written == nullptr) continue;
        for (QuenchNeed* need : {&plan.nominal, &plan.unreacted})
            need->acid_made +=
                need->electrons * (one.reducer->acid_per_electron - written->acid_per_electron);
        return;
    }
}

std::vector<Composition> streams_of_step(const std::vector<RouteStream>& all, int step, bool unreacted) {
    std::vector<Composition> list;
    for (const RouteStream& stream : all)
        if (stream.step == step) {
            list.push_back(unreacted ? stream.unreacted : stream.nominal);
            // What is recovered was in the pot too.
            list.push_back(stream.recovered);
        }
    return list;
}

} // namespace

std::vector<QuenchPlan> plan_quenches(const Route& route, const QuenchRules& rules) {
    const FlatRoute flat(route);
    const Evaluation evaluation = flat.evaluate(flat.nominal());
    const Route bare = without_quench(route);
    const FlatRoute bare_flat(bare);
    const Evaluation bare_evaluation = bare_flat.evaluate(bare_flat.nominal());
    const std::vector<RouteStream> left = streams_of(bare_flat, bare_evaluation);
    std::vector<QuenchPlan> plans;
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        const int step = static_cast<int>(s);
        QuenchPlan plan;
        plan.step = step;
        plan.step_id = route.steps[s].id;
        plan.nominal = need_of(streams_of_step(left, step, false), rules);
        plan.unreacted = need_of(streams_of_step(left, step, true), rules);
        for (const RouteStream& stream : left)
            if (stream.step == step && stream.kind == StreamKind::liquid && !stream.nominal.empty()) {
                // The first liquid is the one that is quenched; later ones are washes and mother liquors.
                plan.liquid = stream.nominal.volume().millilitres;
                plan.liquid_grams = stream.nominal.total();
                break;
            }
        plan.planned = planned_in(step, flat, evaluation, evaluation.steps[s].scale, plan.nominal,
                                  plan.unreacted, rules.quench);
        for (const PlannedQuench& one : plan.planned)
            plan.planned_electrons += one.electrons;
        count_acid_of_planned_reducer(plan, rules.quench);
        plan.verdict = judge(plan, rules.quench);
        size_the_gap(plan, rules.quench);
        plan.sulfur_dioxide = sulfur_dioxide_left(plan, rules.quench);
        const auto acid = [](const QuenchNeed& need) {
            return std::max(0.0, need.strong_acid + need.acid_made);
        };
        const double strong = std::max(acid(plan.nominal), acid(plan.unreacted));
        plan.strong = neutralise(strong, plan.liquid, rules.quench);
        plan.with_weak = neutralise(strong + std::max(plan.nominal.weak_acid, plan.unreacted.weak_acid),
                                    plan.liquid, rules.quench);
        plan.base_left = std::max({0.0, -plan.nominal.strong_acid - plan.nominal.acid_made,
                                   -plan.unreacted.strong_acid - plan.unreacted.acid_made});
        describe_quench(plan, rules.quench, rules.bench_most);
        plans.push_back(std::move(plan));
    }
    return plans;
}

} // namespace routeweigh::streams
