// SPDX-License-Identifier: MIT
#include "assess/streams/quench_words.hpp"

#include "assess/streams/amounts_in_words.hpp"
#include "assess/streams/quench_need.hpp"
#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace routeweigh::streams {
namespace {

/// The reading that needs more of the quench; where none of it goes by electrons, the one that leaves more.
const QuenchNeed& larger(const QuenchNeed& nominal, const QuenchNeed& unreacted) {
    const auto size = [](const QuenchNeed& need) {
        return std::pair(need.electrons, moles_without_electrons(need));
    };
    return size(unreacted) > size(nominal) ? unreacted : nominal;
}

const QuenchNeed& larger(const QuenchPlan& plan) {
    return larger(plan.nominal, plan.unreacted);
}

std::string left_words(const QuenchNeed& need) {
    constexpr double worth_naming = 1e-3; // of all that is left
    double all = 0;
    for (const std::vector<LeftToDestroy>* list : {&need.oxidisers, &need.reducers})
        for (const LeftToDestroy& left : *list)
            all += left.moles;
    std::vector<std::string> words;
    for (const std::vector<LeftToDestroy>* list : {&need.oxidisers, &need.reducers})
        for (const LeftToDestroy& left : *list)
            if (left.moles >= worth_naming * all)
                words.push_back(fmt::format("{} {}", millimole_words(left.moles), left.row->name));
    for (const StopHit& hit : need.listed)
        words.push_back(fmt::format("{} {}", gram_words(hit.grams), hit.substance->name));
    return words.empty() ? "nothing" : join(words, ", ");
}

std::string planned_words(const QuenchPlan& plan) {
    std::vector<std::string> list;
    for (const PlannedQuench& one : plan.planned)
        list.push_back(fmt::format("{} {}", gram_words(one.grams), one.substance->name));
    return join(list, " and ");
}

std::string extra_words(const QuenchPlan& plan, const QuenchTable& table) {
    std::string words = fmt::format("have {} more {} ready", gram_words(plan.extra), plan.extra_of);
    for (const PlannedQuench& one : plan.planned)
        if (one.reducer != nullptr && one.mass_fraction < 1 && plan.extra_material > 0) {
            words += fmt::format(" ({} of {}", gram_words(plan.extra_material), one.material);
            if (one.density > 0)
                words += fmt::format(", {} mL", significant(plan.extra_material / one.density, 2));
            words += ")";
            break;
        }
    return words +
           fmt::format(", plus {:g} to {:g} % excess", 100 * table.excess_low, 100 * table.excess_high);
}

std::string verdict_words(const QuenchPlan& plan, const QuenchTable& table) {
    using Verdict = QuenchPlan::Verdict;
    const std::string full = left_words(plan.nominal), other = left_words(plan.unreacted);
    const double share =
        plan.nominal.electrons > 0 ? 100 * plan.planned_electrons / plan.nominal.electrons : 0;
    switch (plan.verdict) {
    case Verdict::nothing_to_destroy:
        return "nothing is left that has to be destroyed, and no quench is planned";
    case Verdict::none_planned: {
        std::string words =
            fmt::format("no quench is planned, and {} is left at full conversion, {} if the lost yield never "
                        "reacted",
                        full, other);
        if (!(larger(plan).electrons > 0)) return words;
        return words + fmt::format(": {} sodium hydrogensulfite for the larger, plus {:g} to {:g} % excess",
                                   gram_words(larger(plan).hydrogensulfite), 100 * table.excess_low,
                                   100 * table.excess_high);
    }
    case Verdict::wrong_kind:
        return fmt::format("wrong kind: {} gives no electrons to {}; {}", planned_words(plan),
                           left_words(larger(plan)), extra_words(plan, table));
    case Verdict::too_little:
        if (!plan.still_left.empty())
            return fmt::format(
                "too little, or its reaction is not in the route file: {} is planned, and {} is left",
                planned_words(plan), join(plan.still_left, ", "));
        return fmt::format("too little: {} is planned, {:.0f} % of what {} at full conversion takes; {}",
                           planned_words(plan), share, full, extra_words(plan, table));
    case Verdict::full_conversion_only:
        return fmt::format(
            "{} covers full conversion ({} left) but not the reading in which the lost yield never "
            "reacted ({} left): {}",
            planned_words(plan), full, other, extra_words(plan, table));
    case Verdict::enough:
        return fmt::format("{} is enough in both readings", planned_words(plan));
    case Verdict::too_much:
        return fmt::format(
            "more than needed: {} is planned, {} is left at most; what stays frees up to {} sulfur "
            "dioxide with acid",
            planned_words(plan), left_words(larger(plan)), gas_words(plan.sulfur_dioxide));
    }
    return "";
}

/// What the planned quench may leave that acid turns into sulfur dioxide.
std::string leaves_words(const QuenchPlan& plan) {
    for (const PlannedQuench& one : plan.planned)
        if (one.reducer != nullptr && one.reducer->sulfur_dioxide > 0)
            return fmt::format("; base before any acid, for {} is left",
                               one.reducer->is_thiosulfate() ? "thiosulfate" : "sulfite");
    return "";
}

/// Tests of what is left, each told once: "starch-iodide paper stays white; the orange is gone".
std::vector<std::string> tests_of(const QuenchNeed& need) {
    std::vector<std::string> tests;
    for (const std::vector<LeftToDestroy>* list : {&need.oxidisers, &need.reducers})
        for (const LeftToDestroy& left : *list)
            for (const std::string& test : left.row->tests)
                add_once(tests, test);
    return tests;
}

void order_of_destroying(QuenchPlan& plan) {
    if (!plan.destroys()) return;
    const QuenchNeed& need = larger(plan.destroyed, plan.destroyed_unreacted);
    plan.how.emplace_back("at the bench, as the last step of the experiment; cool in ice and stir");
    for (const LeftToDestroy& left : need.oxidisers)
        if (!left.row->warning.empty())
            plan.how.push_back(fmt::format("{}: {}", left.row->name, left.row->warning));
    if (!need.oxidisers.empty())
        plan.how.emplace_back(
            "keep the liquor near neutral or basic while the reducer goes in, slowly, in portions: "
            "reducer to oxidiser");
    plan.order = plan.how;
    for (const LeftToDestroy& left : need.reducers)
        plan.order.push_back(fmt::format("{} with {} before any acid: {} needs {}", left.row->name,
                                         left.row->reagent_name, millimole_words(left.moles),
                                         millimole_words(left.moles * left.row->reagent_per_mol())));
    for (const QuenchNeed* reading : {&plan.destroyed, &plan.destroyed_unreacted})
        for (const StopHit& hit : reading->listed)
            add_once(plan.order, fmt::format("{}: {}", hit.substance->name, hit.rule->bottle));
    const std::vector<std::string> tests = tests_of(need);
    if (!tests.empty()) plan.order.push_back(fmt::format("test: {}", join(tests, "; ")));
}

/// "4.6 mmol strong acid and 120 mmol weak acid".
std::string acid_words(const StreamToNeutralise& one) {
    std::vector<std::string> parts;
    if (one.strong_acid > 0) parts.push_back(millimole_words(one.strong_acid) + " strong acid");
    if (one.weak_acid_too) parts.push_back(millimole_words(one.weak_acid) + " weak acid");
    return join(parts, " and ");
}

std::string weak_acid_words(const StreamToNeutralise& one) {
    if (!one.weak_acid_stays) return "";
    return fmt::format("; {} weak acid may stay, so paper still shows it acid",
                       millimole_words(one.weak_acid));
}

void order_of_neutralising(QuenchPlan& plan, double bench_most) {
    for (const StreamToNeutralise& one : plan.to_neutralise) {
        if (const BaseNeeded* base = one.usual_base()) {
            plan.order.push_back(fmt::format(
                "{}: base, in portions, in a vessel of at least {}: {} takes {} sodium "
                "hydrogencarbonate and frees {} carbon dioxide{}{}",
                one.stream, liquid_words(one.base.vessel), acid_words(one), gram_words(base->grams),
                gas_words(base->gas_litres), leaves_words(plan), weak_acid_words(one)));
        } else if (one.strong_base > 0) {
            plan.order.push_back(fmt::format("{}: {} strong base is left: dilute citric, acetic or "
                                             "hydrochloric acid, slowly, with cooling",
                                             one.stream, millimole_words(one.strong_base)));
        } else {
            plan.order.push_back(fmt::format("{}: {}{}", one.stream, one.why, weak_acid_words(one)));
        }
        if (bench_most > 0 && one.liquid > bench_most)
            plan.warnings.push_back(
                fmt::format("{} is more than the {} that the house neutralises at a bench at one time",
                            liquid_words(one.liquid), liquid_words(bench_most)));
    }
}

void write_order(QuenchPlan& plan, double bench_most) {
    order_of_destroying(plan);
    order_of_neutralising(plan, bench_most);
    // Anhydrides and alkoxides make acid or base of themselves.
    const bool acid_is_handled =
        !plan.to_neutralise.empty() || !plan.nominal.listed.empty() || !plan.unreacted.listed.empty();
    if (!plan.order.empty())
        plan.order.push_back(
            fmt::format("wait until no more gas comes{}, then the container{}; vented cap until then",
                        acid_is_handled ? ", check the pH with paper" : "",
                        plan.then.empty() ? std::string() : fmt::format(" ({})", join(plan.then, "; "))));
    plan.order.insert(plan.order.end(), plan.stopped.begin(), plan.stopped.end());
}

void judge_heat(QuenchPlan& plan, const QuenchTable& table) {
    const QuenchNeed& need = larger(plan);
    plan.heat = std::max(0.0, need.heat);
    plan.heat_known = need.heat_known;
    const double rise = warming(plan.heat, plan.liquid_grams);
    plan.warming = rise >= table.warm_from.value ? rise : 0;
    plan.gets_hot = plan.warming > 0 || !plan.heat_known;
    plan.may_boil = plan.warming >= table.boils_from.value;
}

void write_warnings(QuenchPlan& plan) {
    const QuenchNeed& need = larger(plan);
    for (std::string& line : heat_words(plan, true))
        plan.warnings.push_back(std::move(line));
    if (need.gas_litres > 0)
        plan.warnings.push_back(
            fmt::format("left alone it gives up to {} {}", gas_words(need.gas_litres), need.gas));
    if (plan.sulfur_dioxide > 0)
        plan.warnings.push_back(
            fmt::format("acid frees up to {} sulfur dioxide from what the planned quench leaves at "
                        "full conversion",
                        gas_words(plan.sulfur_dioxide)));
    for (const PlannedQuench& one : plan.planned)
        if (one.reducer != nullptr && !one.reducer->note.empty())
            plan.warnings.push_back(fmt::format("{}: {}", one.substance->name, one.reducer->note));
    for (const LeftToDestroy& left : need.oxidisers)
        if (!left.row->metal.empty())
            plan.warnings.push_back(
                fmt::format("{} stays: heavy metal after the quench too", left.row->metal));
}

} // namespace

std::string_view words_of(QuenchPlan::Verdict verdict) {
    using Verdict = QuenchPlan::Verdict;
    switch (verdict) {
    case Verdict::nothing_to_destroy:
        return "nothing to destroy";
    case Verdict::none_planned:
        return "none planned";
    case Verdict::wrong_kind:
        return "wrong kind";
    case Verdict::too_little:
        return "too little";
    case Verdict::full_conversion_only:
        return "full conversion only";
    case Verdict::enough:
        return "enough";
    case Verdict::too_much:
        return "too much";
    }
    return "";
}

void describe_quench(QuenchPlan& plan, const QuenchTable& table, double bench_most) {
    plan.words = verdict_words(plan, table);
    write_order(plan, bench_most);
    judge_heat(plan, table);
    write_warnings(plan);
}

std::vector<std::string> heat_words(const QuenchPlan& plan, bool with_amounts) {
    std::vector<std::string> lines;
    if (!plan.gets_hot) return lines;
    if (!with_amounts)
        lines.emplace_back("the quench gets hot");
    else if (plan.warming > 0)
        lines.push_back(fmt::format("the quench frees about {} kJ{}: {:.0f} K in the whole liquor if all at "
                                    "once and nothing cools",
                                    significant(plan.heat, 2), plan.heat_known ? "" : " at least",
                                    plan.warming));
    if (!plan.heat_known)
        lines.emplace_back("heat of part of the quench is not known: assume that it gets hot");
    if (plan.may_boil)
        lines.emplace_back(
            "that may boil the liquor: ask before anybody quenches it, and dilute it with ice-water first");
    return lines;
}

} // namespace routeweigh::streams
