// SPDX-License-Identifier: MIT
// Quench and neutralisation of one step in blocks.
#include "base/text.hpp"
#include "documents/number.hpp"
#include "documents/waste/waste_parts.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {
namespace {

using streams::QuenchNeed;
using streams::QuenchPlan;

bool needs_attention(const QuenchPlan& plan) {
    return plan.verdict != QuenchPlan::Verdict::enough &&
           plan.verdict != QuenchPlan::Verdict::nothing_to_destroy;
}

std::string left_words(const QuenchNeed& need) {
    std::vector<std::string> list;
    for (const auto* left : {&need.oxidisers, &need.reducers})
        for (const streams::LeftToDestroy& one : *left)
            list.push_back(fmt::format("{} {} mmol", one.row->name, digits(1000 * one.moles)));
    for (const streams::StopHit& hit : need.listed)
        list.push_back(fmt::format("{} {} mmol", hit.substance->name,
                                   digits(1000 * hit.grams / hit.substance->molar_mass)));
    return list.empty() ? "nothing" : join(list, ", ");
}

writing::Table need_table(const QuenchPlan& plan) {
    writing::Table table;
    table.caption = fmt::format("What one pot leaves before the quench, step {}", plan.step_id);
    table.columns = {{.heading = "the yield that is lost"},
                     {.heading = "left to destroy"},
                     {.heading = "sodium hydrogensulfite", .align = decimal, .unit = "g"},
                     {.heading = "or disulfite", .align = decimal, .unit = "g"},
                     {.heading = "or thiosulfate, 5 water", .align = decimal, .unit = "g"},
                     {.heading = "planned covers", .align = decimal, .unit = "%"},
                     {.heading = "strong acid after it", .align = decimal, .unit = "mmol"}};
    for (const auto& [need, words] :
         {std::pair{&plan.nominal, "was made and lost in the workup"}, {&plan.unreacted, "never formed"}}) {
        const double acid = need->acid_after;
        table.rows.push_back({words, left_words(*need), digits_cell(need->hydrogensulfite),
                              digits_cell(need->metabisulfite), digits_cell(need->thiosulfate),
                              need->electrons > 0
                                  ? digits_cell(100 * plan.planned_electrons / need->electrons)
                                  : writing::Cell("-"),
                              acid > 0 ? digits_cell(1000 * acid) : writing::Cell("0", 0)});
    }
    table.remarks = {"Without excess. A quench is enough only if it is enough in both rows."};
    return table;
}

writing::Table base_table(const QuenchPlan& plan) {
    writing::Table table;
    table.caption = fmt::format("Base for one pot, step {}", plan.step_id);
    table.columns = {{.heading = "base"},
                     {.heading = "for the strong acid", .align = decimal, .unit = "g"},
                     {.heading = "gas", .align = decimal, .unit = "L"},
                     {.heading = "with the weak acid too", .align = decimal, .unit = "g"},
                     {.heading = "gas", .align = decimal, .unit = "L"}};
    for (std::size_t i = 0; i < plan.strong.bases.size(); ++i) {
        const streams::BaseNeeded& strong = plan.strong.bases[i];
        const streams::BaseNeeded& both = plan.with_weak.bases[i];
        table.rows.push_back({strong.base->name, digits_cell(strong.grams), digits_cell(strong.gas_litres),
                              digits_cell(both.grams), digits_cell(both.gas_litres)});
    }
    std::vector<std::string> weak;
    for (const streams::StreamToNeutralise& one : plan.to_neutralise)
        if (one.weak_acid_too) weak.push_back(one.stream);
    const std::string only = "only if local rules ask for it.";
    table.remarks = {
        "Of the streams that base goes into: acid that the product did not use, acid set free by the "
        "reaction and acid that the quench makes; the larger of both readings. " +
        (weak.empty()
             ? "Weak acid " + only
             : fmt::format("The weak acid of {} takes base too, as its line says{}", join(weak, " and "),
                           plan.needed.acid < plan.with_weak.acid ? "; other weak acid " + only : "."))};
    return table;
}

writing::Table gas_table(const std::vector<streams::FreedGas>& gases, double pots, const std::string& step) {
    writing::Table table;
    table.caption = fmt::format("Gas set free at most, step {}, at 25 degC and 1 atm", step);
    table.columns = {{.heading = "gas"},
                     {.heading = "when"},
                     {.heading = "one pot", .align = decimal, .unit = "L"},
                     {.heading = fmt::format("a room of {:g}", pots), .align = decimal, .unit = "L"}};
    for (const streams::FreedGas& gas : gases)
        table.rows.push_back({gas.gas, gas.when, digits_cell(gas.pot), digits_cell(gas.room)});
    return table;
}

} // namespace

bool needs_work(const QuenchPlan& plan) {
    return plan.verdict != QuenchPlan::Verdict::nothing_to_destroy || !plan.order.empty() ||
           plan.spill_acid > 0;
}

void add_quench(const QuenchPlan& plan, const streams::ClassWaste& one, const streams::StreamRules& rules,
                WasteBlocks& blocks) {
    const std::string step = one.route->steps.size() > 1 ? plan.step_id + ": " : "";
    const std::string verdict = step + plan.words + ".";
    blocks.emplace_back(writing::Paragraph{needs_attention(plan) ? writing::Text(writing::strong(verdict))
                                                                 : writing::Text(verdict)});
    if (plan.verdict != QuenchPlan::Verdict::nothing_to_destroy) blocks.emplace_back(need_table(plan));
    if (!plan.order.empty()) {
        writing::BulletList order;
        order.numbered = true;
        for (const std::string& line : plan.order)
            order.items.emplace_back(line);
        blocks.emplace_back(std::move(order));
    }
    if (plan.with_weak.acid > 0) blocks.emplace_back(base_table(plan));
    const auto gases = streams::freed_gases(plan, one.pots);
    if (!gases.empty()) blocks.emplace_back(gas_table(gases, one.pots, plan.step_id));
    if (plan.spill_acid > 0)
        blocks.emplace_back(writing::Paragraph{
            fmt::format("If the liquor is spilt: {} mL of saturated sodium hydrogencarbonate take up the "
                        "strong acid of one pot ({}).",
                        digits(streams::spill_bicarbonate(plan.spill_acid, rules.quench, rules.catalogue), 2),
                        describe(rules.quench.spill_from))});
    if (!plan.warnings.empty()) {
        writing::Caution caution{fmt::format("Warnings, step {}", plan.step_id), {}};
        for (const std::string& line : plan.warnings)
            caution.items.emplace_back(line);
        blocks.emplace_back(std::move(caution));
    }
}

} // namespace routeweigh::documents
