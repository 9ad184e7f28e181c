// SPDX-License-Identifier: MIT
#include "assess/streams/quench_plan.hpp"

#include "assess/streams/amounts_in_words.hpp"
#include "assess/streams/quench_need.hpp"
#include "assess/streams/quench_words.hpp"
#include "assess/streams/route_waste.hpp"
#include "base/index.hpp"
#include "base/list.hpp"

#include <fmt/format.h>

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
    const bool anything = plan.nominal.anything() || plan.unreacted.anything();
    if (plan.planned.empty()) return anything ? Verdict::none_planned : Verdict::nothing_to_destroy;
    if (plan.planned_electrons <= 0 && most > 0) return Verdict::wrong_kind;
    if (plan.planned_electrons < least * (1 - close_enough) || !plan.still_left.empty())
        return Verdict::too_little;
    if (plan.planned_electrons < most * (1 - close_enough)) return Verdict::full_conversion_only;
    if (plan.planned_electrons > most * (1 + table.excess_high + close_enough)) return Verdict::too_much;
    return Verdict::enough;
}

/// Which reducer is short, and by how many grams. A planned quench acts in the pot, before anything is
/// parted; without one, each stream takes its own.
void size_the_gap(QuenchPlan& plan, const QuenchTable& table) {
    const double most = plan.planned.empty()
                            ? std::max(plan.destroyed.electrons, plan.destroyed_unreacted.electrons)
                            : std::max(plan.nominal.electrons, plan.unreacted.electrons);
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

/// The equations are written with hydrogensulfite; another reducer makes so much more acid for an electron.
double more_acid_per_electron(const QuenchPlan& plan, const QuenchTable& table) {
    for (const PlannedQuench& one : plan.planned)
        if (one.reducer != nullptr) return table.more_acid_per_electron(*one.reducer);
    return 0;
}

void count_acid_after(QuenchNeed& need, double more_per_electron) {
    need.acid_made += need.electrons * more_per_electron;
    need.acid_after = std::max(0.0, need.strong_acid + need.acid_made);
}

/// One stream, in both readings.
struct StreamNeed {
    const RouteStream* stream;
    QuenchNeed nominal, unreacted;

    StreamNeed(const RouteStream& one, const StreamRules& rules)
        : stream(&one), nominal(need_of(one, false, rules)), unreacted(need_of(one, true, rules)) {}
};

StreamToNeutralise to_neutralise(const StreamAdvice& advice, const StreamNeed& need,
                                 const StreamRules& rules) {
    const auto base = [](const QuenchNeed& one) { return -one.strong_acid - one.acid_made; };
    StreamToNeutralise result;
    result.stream = advice.stream.name;
    result.liquid = advice.largest_volume();
    result.strong_acid = std::max(need.nominal.acid_after, need.unreacted.acid_after);
    result.weak_acid = std::max(need.nominal.weak_acid, need.unreacted.weak_acid);
    result.strong_base = std::max({0.0, base(need.nominal), base(need.unreacted)});
    result.weak_acid_too = advice.decision.needs_base_for_weak_acid();
    result.weak_acid_stays =
        !result.weak_acid_too && result.weak_acid > rules.local.weak_from.value * result.liquid / 1000;
    for (const Treatment& one : advice.decision.first)
        if (one.kind == Treatment::Kind::add_base || one.kind == Treatment::Kind::add_acid)
            result.why += (result.why.empty() ? "" : "; ") + one.words;
    result.base = neutralise(result.acid(), result.liquid, rules.quench);
    return result;
}

/// What the planned quench leaves of what goes by no electrons, in the reading that leaves more.
void add_still_left(QuenchPlan& plan, const StreamAdvice& advice, const StreamRules& rules) {
    const StreamNeed after(advice.stream, rules);
    const QuenchNeed& more = moles_without_electrons(after.unreacted) > moles_without_electrons(after.nominal)
                                 ? after.unreacted
                                 : after.nominal;
    for (const LeftToDestroy& left : more.reducers)
        plan.still_left.push_back(fmt::format("{} {}", millimole_words(left.moles), left.row->name));
    for (const StopHit& hit : more.listed)
        plan.still_left.push_back(fmt::format("{} {}", gram_words(hit.grams), hit.substance->name));
}

/// What is done with the streams of a step, as their decisions say. \param left  without the quench
void follow_decisions(QuenchPlan& plan, const std::vector<StreamAdvice>& streams,
                      const std::vector<StreamNeed>& left, const StreamRules& rules) {
    for (const StreamAdvice& advice : streams) {
        const Decision& decision = advice.decision;
        if (advice.stream.step != plan.step || advice.stream.is_gas()) continue;
        const auto same = std::find_if(left.begin(), left.end(), [&](const StreamNeed& one) {
            return one.stream->name == advice.stream.name;
        });
        const StreamNeed need = same != left.end() ? *same : StreamNeed(advice.stream, rules);
        const bool destroys = need.nominal.anything() || need.unreacted.anything();
        const bool neutralised =
            decision.needs(Treatment::Kind::add_base) || decision.needs(Treatment::Kind::add_acid);
        const bool untreated = std::all_of(decision.first.begin(), decision.first.end(), [](const auto& one) {
            return one.kind == Treatment::Kind::let_gas_leave;
        });
        const bool stopped = decision.outcome == Decision::Outcome::own_bottle && untreated;
        const double acid = std::max(need.nominal.acid_after, need.unreacted.acid_after);
        const double worth_telling = rules.local.weak_from.value * advice.largest_volume() / 1000;
        if (stopped && (destroys || acid > worth_telling))
            plan.stopped.push_back(fmt::format("{}: {}; {}; ask {}", advice.stream.name, decision.summary,
                                               decision.goes_to, decision.ask));
        // In the pot by the planned quench, or afterwards because the stream is to be quenched first.
        const bool destroyed = destroys && !(plan.planned.empty() && untreated);
        if (!destroyed && !neutralised) continue;
        if (destroyed) {
            add_need(plan.destroyed, need.nominal);
            add_need(plan.destroyed_unreacted, need.unreacted);
        }
        if (neutralised) plan.to_neutralise.push_back(to_neutralise(advice, need, rules));
        const bool afterwards = neutralised || stopped || !untreated;
        if (afterwards && decision.outcome != Decision::Outcome::on_product)
            add_once(plan.then, decision.goes_to);
        if (!plan.planned.empty()) add_still_left(plan, advice, rules);
    }
}

void size_the_base(QuenchPlan& plan, const QuenchTable& table) {
    double strong = 0, needed = 0, weak = 0, liquid = 0;
    for (const StreamToNeutralise& one : plan.to_neutralise) {
        if (!(one.acid() > 0)) continue;
        strong += one.strong_acid;
        needed += one.acid();
        weak += one.weak_acid;
        liquid += one.liquid;
    }
    plan.strong = neutralise(strong, liquid, table);
    plan.needed = neutralise(needed, liquid, table);
    plan.with_weak = neutralise(strong + weak, liquid, table);
    plan.spill_acid = std::max(plan.nominal.acid_after, plan.unreacted.acid_after);
}

} // namespace

std::vector<QuenchPlan> plan_quenches(const Route& route, const std::vector<StreamAdvice>& streams,
                                      const StreamRules& rules) {
    const FlatRoute flat(route);
    const Evaluation evaluation = flat.evaluate(flat.nominal());
    const Route bare = without_quench(route);
    const FlatRoute bare_flat(bare);
    const std::vector<RouteStream> bare_streams =
        streams_of(bare_flat, bare_flat.evaluate(bare_flat.nominal()));
    std::vector<QuenchPlan> plans;
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        QuenchPlan plan;
        plan.step = static_cast<int>(s);
        plan.step_id = route.steps[s].id;
        std::vector<StreamNeed> left;
        for (const RouteStream& stream : bare_streams) {
            if (stream.step != plan.step) continue;
            left.emplace_back(stream, rules);
            add_need(plan.nominal, left.back().nominal);
            add_need(plan.unreacted, left.back().unreacted);
            // The first liquid is the one that is quenched; later ones are washes and mother liquors.
            if (stream.kind == StreamKind::liquid && plan.liquid_grams <= 0)
                plan.liquid_grams = stream.nominal.total();
        }
        plan.planned = planned_in(plan.step, flat, evaluation, evaluation.steps[s].scale, plan.nominal,
                                  plan.unreacted, rules.quench);
        for (const PlannedQuench& one : plan.planned)
            plan.planned_electrons += one.electrons;
        const double more_acid = more_acid_per_electron(plan, rules.quench);
        plan.nominal.acid_made += plan.nominal.electrons * more_acid;
        plan.unreacted.acid_made += plan.unreacted.electrons * more_acid;
        for (StreamNeed& one : left) {
            count_acid_after(one.nominal, more_acid);
            count_acid_after(one.unreacted, more_acid);
            plan.nominal.acid_after += one.nominal.acid_after;
            plan.unreacted.acid_after += one.unreacted.acid_after;
        }
        follow_decisions(plan, streams, left, rules);
        plan.verdict = judge(plan, rules.quench);
        size_the_gap(plan, rules.quench);
        plan.sulfur_dioxide = sulfur_dioxide_left(plan, rules.quench);
        size_the_base(plan, rules.quench);
        describe_quench(plan, rules.quench, rules.local.bench_most.value);
        plans.push_back(std::move(plan));
    }
    return plans;
}

} // namespace routeweigh::streams
