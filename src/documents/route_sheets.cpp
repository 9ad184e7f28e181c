// SPDX-License-Identifier: MIT
// Amounts and steps: where a reader of the workbook changes something.
#include "documents/route_sheets.hpp"

#include "base/index.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace routeweigh::documents {
namespace {

using writing::cell_name;
using writing::CellUse;
using writing::column_range;
using writing::Sheet;
using writing::SheetCell;

enum AmountColumn {
    step_column,
    stage_column,
    material_column,
    role_column,
    amount_column,
    substance_column,
    share_column,
    runs_column,
    in_column,
    reused_column,
    bought_column,
    first_weight
};
enum StepColumn {
    id_column,
    title_column,
    theory_column,
    yield_column,
    isolated_column,
    needed_column,
    step_runs_column
};

const Sheet amounts_name{"Amounts", {}, {}, 0}, steps_name{"Steps", {}, {}, 0},
    totals_name{"Totals", {}, {}, 0};

int row_of(int index) {
    return first_data_row + index;
}

std::string amounts_range(const FlatRoute& flat, int column) {
    return column_range(amounts_name, column, row_of(0), row_of(static_cast<int>(flat.inflows().size()) - 1));
}

std::vector<SheetCell> headings(const std::vector<std::string>& words) {
    std::vector<SheetCell> cells;
    for (const std::string& word : words)
        cells.push_back(SheetCell::words(word, CellUse::heading));
    return cells;
}

const Stage& stage_of(const FlatRoute& flat, const Inflow& inflow) {
    return flat.route().steps[at(inflow.step)].stages[at(inflow.stage)];
}

} // namespace

namespace cells {
std::string grams_in(const FlatRoute& flat) {
    return amounts_range(flat, in_column);
}
std::string reused(const FlatRoute& flat) {
    return amounts_range(flat, reused_column);
}
std::string weights(const FlatRoute& flat, int counted_index) {
    return amounts_range(flat, first_weight + counted_index);
}
std::string material_names(const FlatRoute& flat) {
    return amounts_range(flat, material_column);
}
std::string bought(const FlatRoute& flat) {
    return amounts_range(flat, bought_column);
}
std::string isolated(int step) {
    return cell_name(steps_name, isolated_column, row_of(step));
}
std::string yield(int step) {
    return cell_name(steps_name, yield_column, row_of(step));
}
std::string runs(int step) {
    return cell_name(steps_name, step_runs_column, row_of(step));
}
std::string total(int index) {
    return cell_name(totals_name, 1, row_of(index));
}
} // namespace cells

BookPlan::BookPlan(const Assessment& of) : assessment(of), totals(named_totals()) {
    for (double Totals::*total : totals)
        if (!assessment.compiled().totals_map().counting(total).weights.empty()) counted.push_back(total);
    const FlatRoute& flat = assessment.flat();
    // Asked of the model itself: an amount is free where no theoretical yield depends on it at all.
    const Evaluation& written = assessment.evaluation();
    Evaluation changed;
    for (std::size_t slot = 0; slot < flat.nominal().charged.size(); ++slot) {
        bool free = true;
        for (const double factor : {0.0, 10.0}) {
            Inputs inputs = flat.nominal();
            inputs.charged[slot] *= factor;
            flat.evaluate(inputs, changed);
            for (std::size_t step = 0; step < written.steps.size(); ++step)
                free = free && std::abs(changed.steps[step].theory - written.steps[step].theory) <=
                                   1e-12 * written.steps[step].theory;
        }
        free_charges.push_back(free);
    }
    bool reuses = false;
    for (std::size_t i = 0; i < flat.inflows().size(); ++i) {
        const Inflow& inflow = flat.inflows()[i];
        reuses = reuses || written.credit[i] != 0.0;
        if (written.credit[i] != 0.0 || inflow.as_used || inflow.fed_by >= 0)
            free_charges[at(inflow.slot)] = false;
    }
    free_yields = !flat.scale_plan().has_loop() && !(reuses && flat.steps().size() > 1);
}

Sheet amounts_sheet(const BookPlan& plan) {
    const Assessment& assessment = plan.assessment;
    const FlatRoute& flat = assessment.flat();
    const Evaluation& written = assessment.evaluation();
    Sheet sheet{"Amounts", {18, 24, 30, 18, 12, 26, 9, 9, 11, 9, 11}, {}, first_data_row - 1};
    sheet.add({SheetCell::words("Amounts: every charge, substance by substance", CellUse::title)});
    sheet.add(
        {SheetCell::words("Grams of a charge are for one run of its step; what goes in is for one run of the "
                          "route. The columns on the right say what each total counts per gram.",
                          CellUse::note)});
    std::vector<std::string> words{"step",    "stage", "material", "role",      "charge, g", "substance",
                                   "g per g", "runs",  "in, g",    "reused, g", "bought, g"};
    for (double Totals::*total : plan.counted)
        words.emplace_back(total_name(total));
    sheet.add(headings(words));
    int first_row = 0; // of the charge that the inflow belongs to
    for (std::size_t i = 0; i < flat.inflows().size(); ++i) {
        const Inflow& inflow = flat.inflows()[i];
        const Stage& stage = stage_of(flat, inflow);
        const Charge& charge = stage.charges[at(inflow.charge)];
        const int row = row_of(static_cast<int>(i));
        const bool first = i == 0 || flat.inflows()[i - 1].slot != inflow.slot;
        if (first) first_row = row;
        const double scale = written.steps[at(inflow.step)].scale;
        const double grams = inflow.as_used ? written.in[i] / scale : flat.nominal().charged[at(inflow.slot)];
        const double share = inflow.as_used ? 1.0 : inflow.fraction;
        const bool bought = first && inflow.fed_by < 0 && !inflow.as_used;
        std::vector<SheetCell> cells{
            SheetCell::words(flat.route().steps[at(inflow.step)].id),
            SheetCell::words(stage.title),
            SheetCell::words(charge.material->name),
            SheetCell::words(std::string(charge.role->name)),
            first ? SheetCell::number(grams,
                                      plan.free_charges[at(inflow.slot)] ? CellUse::input : CellUse::result)
                  : SheetCell::live("=" + cell_name(amount_column, first_row), grams),
            SheetCell::words(inflow.substance->name),
            SheetCell::number(share),
            SheetCell::live("=" + cells::runs(inflow.step), scale),
            SheetCell::live(fmt::format("={}*{}*{}", cell_name(amount_column, row),
                                        cell_name(share_column, row), cell_name(runs_column, row)),
                            written.in[i]),
            SheetCell::number(written.credit[i]),
            bought ? SheetCell::live(
                         fmt::format("={}*{}", cell_name(amount_column, row), cell_name(runs_column, row)),
                         grams * scale)
                   : SheetCell::number(0.0)};
        for (double Totals::*total : plan.counted)
            cells.push_back(SheetCell::number(assessment.compiled().totals_map().counting(total).weights[i]));
        sheet.add(std::move(cells));
    }
    return sheet;
}

Sheet steps_sheet(const BookPlan& plan) {
    const Assessment& assessment = plan.assessment;
    const FlatRoute& flat = assessment.flat();
    const Evaluation& written = assessment.evaluation();
    Sheet sheet{"Steps", {18, 40, 18, 12, 12, 12, 10}, {}, first_data_row - 1};
    sheet.add({SheetCell::words("Steps: theory, yield, and how often each is run", CellUse::title)});
    sheet.add({SheetCell::words("Grams are for one run of the step; needed is what the steps after it take.",
                                CellUse::note)});
    sheet.add(headings(
        {"step", "title", "theoretical yield, g", "isolated yield", "isolated, g", "needed, g", "runs"}));
    for (std::size_t s = 0; s < flat.steps().size(); ++s) {
        const Step& step = flat.route().steps[s];
        const StepResult& result = written.steps[s];
        const int row = row_of(static_cast<int>(s));
        const double theory = result.theory * step.product->molar_mass;
        const double isolated = result.isolated * step.product->molar_mass;
        const CellUse use = plan.free_yields ? CellUse::input : CellUse::result;
        std::vector<SheetCell> cells{SheetCell::words(step.id), SheetCell::words(step.title),
                                     SheetCell::number(theory)};
        const std::string theory_cell = cell_name(theory_column, row),
                          yield_cell = cell_name(yield_column, row),
                          isolated_cell = cell_name(isolated_column, row);
        if (flat.steps()[s].isolated_is_mass) {
            cells.push_back(SheetCell::live(fmt::format("={}/{}", isolated_cell, theory_cell),
                                            isolated / theory, "0.0 %"));
            cells.push_back(SheetCell::number(isolated, use));
        } else {
            cells.push_back(SheetCell::number(isolated / theory, use, "0.0 %"));
            cells.push_back(SheetCell::live(fmt::format("={}*{}", theory_cell, yield_cell), isolated));
        }
        if (static_cast<int>(s) == flat.final_step()) {
            cells.push_back({});
            cells.push_back(SheetCell::number(1.0));
        } else if (!plan.free_yields) {
            cells.push_back(SheetCell::number(result.scale * isolated));
            cells.push_back(SheetCell::number(result.scale));
        } else {
            std::string needed = "=0";
            for (std::size_t i = 0; i < flat.inflows().size(); ++i)
                if (flat.inflows()[i].fed_by == static_cast<int>(s))
                    needed += "+" + cell_name(amounts_name, in_column, row_of(static_cast<int>(i)));
            cells.push_back(SheetCell::live(needed, result.scale * isolated));
            cells.push_back(SheetCell::live(
                fmt::format("={}/{}", cell_name(needed_column, row), isolated_cell), result.scale));
        }
        sheet.add(std::move(cells));
    }
    return sheet;
}

} // namespace routeweigh::documents
