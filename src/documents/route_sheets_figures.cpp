// SPDX-License-Identifier: MIT
// Totals and figures of the workbook: live where every number behind them is.
#include "assess/total_parts.hpp"
#include "base/index.hpp"
#include "documents/number.hpp"
#include "documents/route_sheets.hpp"
#include "documents/working.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace routeweigh::documents {
namespace {

using writing::CellUse;
using writing::Sheet;
using writing::SheetCell;
using Total = double Totals::*;

std::optional<int> index_of(const std::vector<Total>& totals, Total wanted) {
    const auto found = std::find(totals.begin(), totals.end(), wanted);
    if (found == totals.end()) return std::nullopt;
    return static_cast<int>(found - totals.begin());
}

/// Does not move with any amount or yield that the workbook lets change.
bool is_constant(const Assessment& assessment, Total total) {
    static constexpr Total of_equations[] = {&Totals::formula_product,
                                             &Totals::formula_inputs,
                                             &Totals::formula_inputs_gross,
                                             &Totals::formula_coproducts,
                                             &Totals::carbon_product,
                                             &Totals::carbon_inputs,
                                             &Totals::bromine_product,
                                             &Totals::bromine_inputs,
                                             &Totals::nitrogen_product,
                                             &Totals::nitrogen_inputs,
                                             &Totals::chlorine_product,
                                             &Totals::chlorine_inputs,
                                             &Totals::time};
    if (std::find(std::begin(of_equations), std::end(of_equations), total) != std::end(of_equations))
        return true;
    // Of a single step that nothing scales.
    const bool single = assessment.flat().steps().size() == 1;
    return single && (total == &Totals::reactants_needed || total == &Totals::theoretical_product ||
                      total == &Totals::energy || total == &Totals::cooling_water);
}

/// How the total follows from other cells; empty where it does not.
std::string formula_of(const BookPlan& plan, Total total) {
    const Assessment& assessment = plan.assessment;
    const FlatRoute& flat = assessment.flat();
    if (!plan.free_yields) return {}; // fed back: nothing here solves for the runs
    const std::string product = cells::isolated(flat.final_step());
    if (const auto index = index_of(plan.counted, total)) {
        const bool net = assessment.compiled().totals_map().counting(total).net;
        const std::string grams = cells::grams_in(flat);
        return fmt::format("=SUMPRODUCT({},{})",
                           net ? fmt::format("({}-{})", grams, cells::reused(flat)) : grams,
                           cells::weights(flat, *index));
    }
    if (total == &Totals::product) return "=" + product;
    if (total == &Totals::recovered) return fmt::format("=SUM({})", cells::reused(flat));
    if (total == &Totals::waste) {
        const auto cell = [&plan](Total part) { return cells::total(*index_of(plan.totals, part)); };
        return fmt::format("={}-{}-{}", cell(&Totals::inputs_gross), cell(&Totals::recovered),
                           cell(&Totals::product));
    }
    if (total == &Totals::product_moles)
        return fmt::format("={}/{}", product, assessment.route().product->molar_mass);
    if (total == &Totals::product_carbon)
        return fmt::format("={}*{}", product,
                           carbon_fraction(assessment.route(), *assessment.route().product));
    if (total == &Totals::yield) {
        std::vector<double> yields;
        for (const StepResult& step : assessment.evaluation().steps)
            yields.push_back(step.isolated / step.theory);
        std::string text = "=1";
        for (const int step : flat.scale_plan().longest_sequence(yields))
            text += "*" + cells::yield(step);
        return text;
    }
    return {};
}

/// Is right after every change that the workbook allows.
bool follows(const BookPlan& plan, Total total) {
    return plan.free_yields && (is_constant(plan.assessment, total) || !formula_of(plan, total).empty());
}

} // namespace

std::vector<Total> named_totals() {
    // Waste is what goes in and is neither product nor recovered, so what goes in is named first.
    std::vector<Total> totals{&Totals::inputs_gross, &Totals::recovered, &Totals::product};
    for (const Metric* metric : all_metrics())
        for (const auto terms : {metric->above, metric->below})
            for (const Term& term : terms)
                if (!index_of(totals, term.total)) totals.push_back(term.total);
    return totals;
}

std::string total_name(Total total) {
    if (total == &Totals::inputs_gross) return "all that goes in, gross";
    if (total == &Totals::recovered) return "recovered";
    for (const Metric* metric : all_metrics())
        for (const auto terms : {metric->above, metric->below})
            for (const Term& term : terms)
                if (term.total == total) return std::string(term.words);
    return {};
}

Sheet totals_sheet(const BookPlan& plan) {
    Sheet sheet{"Totals", {44, 16, 10, 14}, {}, first_data_row - 1};
    sheet.add({SheetCell::words("Totals: the sums that figures are made of", CellUse::title)});
    sheet.add({SheetCell::words(
        "For one run of the route. As written: needs the streams, does not follow changes.", CellUse::note)});
    sheet.add({SheetCell::words("total", CellUse::heading), SheetCell::words("value", CellUse::heading),
               SheetCell::words("unit", CellUse::heading), SheetCell::words("follows", CellUse::heading)});
    for (const Total total : plan.totals) {
        const double value = plan.assessment.totals().*total;
        std::string formula = formula_of(plan, total);
        const bool live = !formula.empty();
        sheet.add({SheetCell::words(total_name(total)),
                   live ? SheetCell::live(std::move(formula), value) : SheetCell::number(value),
                   SheetCell::words(std::string(unit_of_total(total))),
                   SheetCell::words(live                   ? "live"
                                    : follows(plan, total) ? "constant"
                                                           : "as written")});
    }
    return sheet;
}

Sheet figures_sheet(const BookPlan& plan) {
    Sheet sheet{"Figures", {44, 30, 14, 10, 14, 60}, {}, first_data_row - 1};
    sheet.add({SheetCell::words("Figures", CellUse::title)});
    sheet.add({SheetCell::words("Each is the ratio of totals named in its formula.", CellUse::note)});
    sheet.add({SheetCell::words("figure", CellUse::heading), SheetCell::words("id", CellUse::heading),
               SheetCell::words("value", CellUse::heading), SheetCell::words("unit", CellUse::heading),
               SheetCell::words("follows", CellUse::heading),
               SheetCell::words("boundary", CellUse::heading)});
    const auto sum = [&plan](std::span<const Term> terms) {
        std::string text;
        for (const Term& term : terms)
            text += fmt::format("{}{}",
                                term.sign < 0.0 ? "-"
                                : text.empty()  ? ""
                                                : "+",
                                cells::total(*index_of(plan.totals, term.total)));
        return text;
    };
    for (const Metric* metric : all_metrics()) {
        const double value = plan.assessment.metric(metric->id);
        bool live = metric->derive == nullptr && !std::isnan(value);
        for (const auto terms : {metric->above, metric->below})
            for (const Term& term : terms)
                live = live && follows(plan, term.total);
        SheetCell cell = SheetCell::number(value, CellUse::result, "0.0###");
        if (live) {
            cell.formula = fmt::format("={}*({})", metric->factor, sum(metric->above));
            if (!metric->below.empty()) cell.formula += fmt::format("/({})", sum(metric->below));
        }
        sheet.add({SheetCell::words(std::string(metric->name)), SheetCell::words(std::string(metric->id)),
                   cell, SheetCell::words(std::string(metric->unit)),
                   SheetCell::words(std::isnan(value) ? std::string(metric->missing)
                                    : live            ? "live"
                                                      : "as written"),
                   SheetCell::words(std::string(metric->boundary))});
    }
    return sheet;
}

} // namespace routeweigh::documents
