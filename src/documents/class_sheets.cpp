// SPDX-License-Identifier: MIT
#include "documents/class_sheets.hpp"

#include "base/text.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace routeweigh::documents {
namespace {

using stock::Need;
using stock::Preparation;
using stock::StockLine;
using writing::cell_name;
using writing::CellUse;
using writing::Sheet;
using writing::SheetCell;

constexpr int first_need_row = 7; // below students, sections and extra
constexpr int first_line_row = 4;
const char* const runs_of_class = "Stock!$B$2*Stock!$B$3";
const char* const portions_of_class = "Stock!$B$2*Stock!$B$3*(1+Stock!$B$4)";

std::vector<SheetCell> heading_cells(const std::vector<std::string>& words) {
    std::vector<SheetCell> cells;
    for (const std::string& word : words)
        cells.push_back(SheetCell::words(word, CellUse::heading));
    return cells;
}

/// Grams of one run in column B; of the class in C and, for what is poured, mL in D.
void add_class_amounts(std::vector<SheetCell>& cells, const Need& need, int row) {
    cells.push_back(
        SheetCell::live(fmt::format("={}*{}", cell_name(1, row), portions_of_class), need.grams, "0.00"));
    if (stock::is_poured(*need.material))
        cells.push_back(SheetCell::live(fmt::format("={}/{}", cell_name(2, row), *need.material->density),
                                        need.grams / *need.material->density, "0.0"));
}

const Preparation* made_of(const stock::StockList& list, const Material* material) {
    const auto found = std::find_if(list.preparations.begin(), list.preparations.end(),
                                    [&](const Preparation& one) { return one.recipe.solution == material; });
    return found == list.preparations.end() ? nullptr : &*found;
}

/// What this need asks of a bottle, as terms of a formula: all of it, the share of the solution that is made
/// from this bottle, or "".
std::string terms_of(const Need& need, const std::string& cell, const StockLine& line,
                     const stock::StockList& list) {
    const Preparation* made = made_of(list, need.material);
    if (made == nullptr) return need.material == line.material ? "+" + cell : "";
    const stock::Recipe& recipe = made->recipe;
    std::string terms;
    if (recipe.stock == line.material) terms += fmt::format("+{}*{}", recipe.stock_share, cell);
    if (recipe.water == line.material) terms += fmt::format("+{}*{}", 1.0 - recipe.stock_share, cell);
    return terms;
}

std::string grams_needed(const StockLine& line, const stock::StockList& list) {
    std::string terms;
    int row = first_need_row;
    for (const Need& need : list.needs)
        terms += terms_of(need, fmt::format("Stock!C{}", row++), line, list);
    row = first_line_row;
    for (const Need& need : list.waste.needs)
        terms += terms_of(need, fmt::format("Treatment!C{}", row++), line, list);
    return terms.empty() ? "=0" : "=" + terms.substr(1);
}

SheetCell input_cell(const double* value, std::string format) {
    if (value != nullptr) return SheetCell::number(*value, CellUse::input, std::move(format));
    return {{}, {}, CellUse::input, std::move(format)};
}

/// Money that stays blank until a price is written in.
/// \param counted  cells that must all hold a number: "E5:F5"; \param needed  how many they are
SheetCell money_cell(const std::string& counted, int needed, const std::string& formula,
                     std::optional<double> value) {
    std::string blank_or = fmt::format("=IF(COUNT({})<{},\"\",{})", counted, needed, formula);
    if (value) return SheetCell::live(std::move(blank_or), *value, "0.00");
    // The file holds a nought where a formula has no value: this format shows none.
    return {{}, std::move(blank_or), CellUse::result, "0.00;-0.00;"};
}

/// The sum of what has a price, blank where nothing has one.
SheetCell sum_cell(int column, int first, int last, std::optional<double> value) {
    if (last < first) return {};
    const std::string range = fmt::format("{}:{}", cell_name(column, first), cell_name(column, last));
    return money_cell(range, 1, fmt::format("SUM({})", range), value);
}

bool has_pack(const StockLine& line) {
    return !line.from_tap && !line.packs.empty();
}

std::optional<double> cost_of_packs(const stock::StockList& list) {
    if (std::none_of(list.lines.begin(), list.lines.end(), has_pack)) return std::nullopt;
    return list.cost;
}

/// " Without a price as the workbook was made, and so not in the sum: bromine."
std::string unpriced_words(const std::vector<std::string>& names) {
    if (names.empty()) return {};
    return " Without a price as the workbook was made, and so not in the sum: " + join(names, ", ") + ".";
}

} // namespace

Sheet stock_sheet(const BookPlan& plan, const course::ClassUse& use) {
    const FlatRoute& flat = plan.assessment.flat();
    Sheet sheet{"Stock", {44, 14, 16, 16}, {}, first_need_row - 1};
    sheet.add({SheetCell::words("Stock for a class", CellUse::title)});
    sheet.add({SheetCell::words("students in a section, each with a run of the whole route"),
               SheetCell::number(use.plan.students, CellUse::input, "0")});
    sheet.add({SheetCell::words("sections"), SheetCell::number(use.plan.sections, CellUse::input, "0")});
    sheet.add({SheetCell::words("extra"), SheetCell::number(use.plan.extra, CellUse::input, "0 %")});
    sheet.add({SheetCell::words("Intermediates of the route and oxygen from the air are not counted.",
                                CellUse::note)});
    sheet.add(heading_cells({"material", "g a run", "g for the class", "mL for the class"}));
    for (const Need& need : use.stock.needs) {
        const int row = static_cast<int>(sheet.rows.size()) + 1;
        std::vector<SheetCell> cells{
            SheetCell::words(need.material->name),
            SheetCell::live(fmt::format("=SUMPRODUCT(({}={})*{})", cells::material_names(flat),
                                        cell_name(0, row), cells::bought(flat)),
                            need.per_run, "0.000")};
        add_class_amounts(cells, need, row);
        sheet.add(std::move(cells));
    }
    return sheet;
}

Sheet treatment_sheet(const course::ClassUse& use) {
    Sheet sheet{"Treatment", {44, 14, 16, 16, 60}, {}, first_line_row - 1};
    sheet.add({SheetCell::words("For the waste, before streams leave the bench", CellUse::title)});
    const std::vector<std::string>& unweighed = use.stock.waste.unweighed;
    sheet.add({SheetCell::words(
        fmt::format("Grams of a run are those of the waste plan as written and do not follow.{}",
                    unweighed.empty() ? "" : " Without an amount: " + join(unweighed, "; ") + "."),
        CellUse::note)});
    sheet.add(heading_cells({"material", "g a run", "g for the class", "mL for the class", "what for"}));
    for (const Need& need : use.stock.waste.needs) {
        const int row = static_cast<int>(sheet.rows.size()) + 1;
        std::vector<SheetCell> cells{SheetCell::words(need.material->name),
                                     SheetCell::number(need.per_run, CellUse::result, "0.000")};
        add_class_amounts(cells, need, row);
        cells.resize(4);
        cells.push_back(SheetCell::words(join(need.uses, "; ")));
        sheet.add(std::move(cells));
    }
    return sheet;
}

Sheet order_sheet(const course::ClassUse& use) {
    Sheet sheet{"Order", {44, 14, 14, 14, 12, 12, 10, 12, 14}, {}, first_line_row - 1};
    sheet.add({SheetCell::words("What to have on the day", CellUse::title)});
    std::vector<std::string> unpriced;
    for (const Material* material : use.stock.unpriced)
        unpriced.push_back(material->name);
    sheet.add({SheetCell::words("Write in what the shelf holds, the pack and its price. The packs are those "
                                "that cost least for the class as the workbook was made; where these are of "
                                "several sizes, one set of them counts as a pack." +
                                    unpriced_words(unpriced),
                                CellUse::note)});
    sheet.add(heading_cells({"material", "g needed", "g on the shelf", "g to get", "g in a pack",
                             "price of a pack", "packs", "cost", "g left over"}));
    const double nothing = 0;
    for (const StockLine& line : use.stock.lines) {
        if (line.from_tap) continue;
        const int row = static_cast<int>(sheet.rows.size()) + 1;
        const stock::PackChoice& packs = line.packs;
        // Of one size: a pack. Of several: all of them together, since the sheet has one size a row.
        const bool mixed = packs.packs.size() > 1;
        const int times = packs.empty() || mixed ? 1 : packs.packs.front().count;
        const double pack_grams = packs.grams / times, pack_price = packs.cost / times;
        const auto at_row = [row](int column) { return cell_name(column, row); };
        sheet.add(
            {SheetCell::words(line.material->name + (mixed ? ", packs " + packs.words() : "")),
             SheetCell::live(grams_needed(line, use.stock), line.needed(), "0.00"),
             input_cell(&nothing, "0.00"),
             SheetCell::live(fmt::format("=MAX(0,{}-{})", at_row(1), at_row(2)), line.to_get, "0.00"),
             input_cell(packs.empty() ? nullptr : &pack_grams, "0.0"),
             input_cell(packs.empty() ? nullptr : &pack_price, "0.00"),
             // A need that is a whole number of packs but for rounding takes no further pack.
             SheetCell::live(fmt::format("=IF({0}>0,ROUNDUP({1}/{0}*(1-1E-12),0),0)", at_row(4), at_row(3)),
                             packs.empty() ? 0 : times, "0"),
             money_cell(at_row(4) + ":" + at_row(5), 2, fmt::format("{}*{}", at_row(6), at_row(5)),
                        has_pack(line) ? std::optional(packs.cost) : std::nullopt),
             SheetCell::live(fmt::format("=IF({0}>0,{1}*{0}-{2},0)", at_row(4), at_row(6), at_row(3)),
                             packs.left_over, "0.00")});
    }
    const int last = static_cast<int>(sheet.rows.size());
    std::vector<SheetCell> total(7);
    total.front() = SheetCell::words("together", CellUse::heading);
    total.push_back(sum_cell(7, first_line_row, last, cost_of_packs(use.stock)));
    sheet.add(std::move(total));
    return sheet;
}

Sheet costs_sheet(const course::ClassUse& use, const course::House& house) {
    constexpr double joules = 3600; // kJ in a kWh
    const stock::PriceList& prices = house.prices;
    Sheet sheet{"Costs", {44, 14, 10, 16, 16, 14}, {}, first_line_row - 1};
    sheet.add({SheetCell::words("What the class costs" +
                                    (prices.currency.empty() ? std::string() : ", in " + prices.currency),
                                CellUse::title)});
    sheet.add({SheetCell::words(
        fmt::format(
            "Volumes, power and water of a run are those as written. Extra stock is in the packs alone.{}{}",
            prices.words().empty() ? "" : " " + capitalised(prices.words()) + ".",
            unpriced_words(use.money.unpriced)),
        CellUse::note)});
    sheet.add(heading_cells({"", "a run", "unit", "for the class", "price of a unit", "cost"}));
    const int order_total =
        first_line_row +
        static_cast<int>(std::count_if(use.stock.lines.begin(), use.stock.lines.end(),
                                       [](const StockLine& line) { return !line.from_tap; }));
    std::vector<SheetCell> packs(5);
    packs.front() = SheetCell::words("packs of chemicals");
    const std::string ordered = "Order!" + cell_name(7, order_total);
    const std::optional<double> cost = cost_of_packs(use.stock);
    packs.push_back(money_cell(ordered, 1, ordered, cost));
    sheet.add(std::move(packs));
    bool any_price = cost.has_value();
    const auto add = [&](std::string name, double of_class, const char* unit, const double* price) {
        const int row = static_cast<int>(sheet.rows.size()) + 1;
        any_price = any_price || price != nullptr;
        sheet.add(
            {SheetCell::words(std::move(name)),
             SheetCell::number(of_class / use.runs(), CellUse::result, "0.0000"), SheetCell::words(unit),
             SheetCell::live(fmt::format("={}*{}", cell_name(1, row), runs_of_class), of_class, "0.000"),
             input_cell(price, "0.00"),
             money_cell(cell_name(4, row), 1, fmt::format("{}*{}", cell_name(3, row), cell_name(4, row)),
                        price != nullptr ? std::optional(of_class * *price) : std::nullopt)});
    };
    for (const course::Disposal& one : use.money.disposals)
        add("disposal: " + one.container, one.millilitres / 1000, "L", one.price ? &*one.price : nullptr);
    add("electricity", use.one.socket.usual * use.runs() / joules, "kWh",
        prices.electricity ? &*prices.electricity : nullptr);
    add("water for cooling and suction", (use.one.cooling.usual + use.one.suction.usual) * use.runs() / 1000,
        "m3", prices.water ? &*prices.water : nullptr);
    const int last = static_cast<int>(sheet.rows.size());
    const auto add_sum = [&sheet](const char* name, SheetCell sum) {
        std::vector<SheetCell> cells(5);
        cells.front() = SheetCell::words(name, CellUse::heading);
        cells.push_back(std::move(sum));
        return sheet.add(std::move(cells));
    };
    const auto if_any = [any_price](double money) { return any_price ? std::optional(money) : std::nullopt; };
    const std::string spent =
        cell_name(5, add_sum("spent when every pack is bought",
                             sum_cell(5, first_line_row, last, if_any(use.money.spent()))));
    add_sum("for a student", money_cell(spent, 1, fmt::format("{}/({})", spent, runs_of_class),
                                        if_any(use.money.spent() / use.runs())));
    return sheet;
}

} // namespace routeweigh::documents
