// SPDX-License-Identifier: MIT
#include "documents/stock_list_document.hpp"

#include "assess/bench/equipment.hpp"
#include "base/index.hpp"
#include "base/text.hpp"
#include "documents/amount_text.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/stock_list_data.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace routeweigh {
namespace {

using documents::amount_text;
using documents::digits;
using documents::fixed;
using documents::grams_text;
using stock::Batch;
using stock::Need;
using stock::Preparation;
using stock::StockLine;
using stock::StockList;

std::string money(double amount, const stock::PriceList& prices) {
    return fixed(amount, 2) + " " + prices.currency;
}

std::string class_words(const stock::ClassPlan& plan) {
    std::string words =
        plan.sections == 1
            ? documents::counted(static_cast<std::size_t>(plan.students), "student", "students")
            : fmt::format("{} of {} each",
                          documents::counted(static_cast<std::size_t>(plan.sections), "section", "sections"),
                          documents::counted(static_cast<std::size_t>(plan.students), "student", "students"));
    if (plan.extra > 0) words += fmt::format(", {:g} % extra", 100 * plan.extra);
    return words;
}

std::string extra_suffix(const stock::ClassPlan& plan) {
    return plan.extra > 0 ? ", with extra" : "";
}

writing::Cell amount_cell(double grams, const Material& material) {
    return {amount_text(grams, material), grams};
}

writing::Table charge_table(const StockList& list) {
    writing::Table table;
    table.caption = "What the class uses";
    table.columns = {{.heading = "material"},
                     {.heading = "one student", .align = writing::Align::right},
                     {.heading = "one section" + extra_suffix(list.plan), .align = writing::Align::right},
                     {.heading = "all" + extra_suffix(list.plan), .align = writing::Align::right},
                     {.heading = "comes from"}};
    for (const Need& need : list.needs) {
        const auto made =
            std::find_if(list.preparations.begin(), list.preparations.end(),
                         [&](const Preparation& p) { return p.recipe.solution == need.material; });
        const auto line = std::find_if(list.lines.begin(), list.lines.end(),
                                       [&](const StockLine& l) { return l.material == need.material; });
        const bool from_tap = line != list.lines.end() && line->from_tap;
        std::string origin = made != list.preparations.end() ? "made from " + made->recipe.stock->name
                             : from_tap                      ? "the tap or the still"
                                                             : "the bottle";
        table.rows.push_back({need.material->name, amount_cell(need.per_run, *need.material),
                              amount_cell(need.grams / list.plan.sections, *need.material),
                              amount_cell(need.grams, *need.material), std::move(origin)});
    }
    return table;
}

writing::Table waste_table(const StockList& list) {
    writing::Table table;
    table.caption = "For the waste, before streams leave the bench";
    table.columns = {{.heading = "material"},
                     {.heading = "one student", .align = writing::Align::right},
                     {.heading = "one section" + extra_suffix(list.plan), .align = writing::Align::right},
                     {.heading = "all" + extra_suffix(list.plan), .align = writing::Align::right},
                     {.heading = "what for"}};
    for (const Need& need : list.waste.needs)
        table.rows.push_back({need.material->name, amount_cell(need.per_run, *need.material),
                              amount_cell(need.grams / list.plan.sections, *need.material),
                              amount_cell(need.grams, *need.material), join(need.uses, "; ")});
    if (!list.waste.unweighed.empty())
        table.remarks.push_back("Without an amount: " + join(list.waste.unweighed, "; ") + ".");
    table.remarks.emplace_back(
        "Amounts are those of the waste plan, of the quench of an oxidiser with its largest excess. Test "
        "papers decide, so have more at hand.");
    return table;
}

writing::Table equipment_table(const bench::Experiment& experiment, const stock::ClassPlan& plan) {
    writing::Table table;
    table.caption = "Glassware and apparatus";
    table.columns = {{.heading = "piece"},
                     {.heading = "one student", .align = writing::Align::right},
                     {.heading = "one section", .align = writing::Align::right},
                     {.heading = "for"}};
    bool pooled = false;
    for (const bench::Equipment& one : bench::equipment_of(experiment)) {
        const int pieces = one.pieces(plan.students);
        table.rows.push_back({one.name, one.is_pooled() ? writing::Cell("pooled") : writing::Cell("1", 1),
                              writing::Cell(std::to_string(pieces), pieces), join(one.uses, "; ")});
        pooled = pooled || one.is_pooled();
    }
    table.remarks = {
        "Standard sizes that fit what the route puts in them; common practice, no source. Sections "
        "use the same pieces one after the other. What every bench has, such as clamps and stirring, "
        "is not listed."};
    if (pooled)
        table.remarks.emplace_back("Pooled: one run of its step makes enough for several students, who share "
                                   "what it gives.");
    return table;
}

/// \pre there is a price list
writing::Cell pack_cell(const StockLine& line) {
    if (line.from_tap || !(line.to_get > 0)) return {};
    if (!line.packs.empty()) return line.packs.words();
    return writing::missing("the price list has no pack of it");
}

writing::Table order_table(const StockList& list, const stock::PriceList& prices, bool shelf_given) {
    const bool priced = !prices.packs.empty();
    writing::Table table;
    table.caption = "What to have on the day";
    table.columns = {{.heading = "material"}, {.heading = "needed", .align = writing::Align::right}};
    if (shelf_given) table.columns.push_back({.heading = "on the shelf", .align = writing::Align::right});
    table.columns.push_back({.heading = "to get", .align = writing::Align::right});
    if (priced) {
        table.columns.push_back({.heading = "packs", .align = writing::Align::right});
        table.columns.push_back({.heading = "left over", .align = writing::Align::right});
        table.columns.push_back(
            {.heading = "cost", .align = writing::Align::decimal, .unit = prices.currency});
    }
    for (const StockLine& line : list.lines) {
        if (line.from_tap) continue;
        writing::Row row({writing::Cell(line.material->name), amount_cell(line.needed(), *line.material)});
        if (shelf_given) {
            writing::Cell cell = amount_cell(line.on_shelf, *line.material);
            if (line.shelf_expired) cell.note = "more stands there, past its date on the last day of class";
            row.cells.push_back(cell);
        }
        row.cells.push_back(line.to_get > 0 ? amount_cell(line.to_get, *line.material)
                                            : writing::Cell("nothing"));
        if (priced) {
            row.cells.push_back(pack_cell(line));
            row.cells.push_back(!line.packs.empty() ? amount_cell(line.packs.left_over, *line.material)
                                                    : writing::Cell());
            row.cells.emplace_back();
            if (!line.packs.empty()) row.cells.back() = {fixed(line.packs.cost, 2), line.packs.cost};
        }
        table.rows.push_back(row);
    }
    if (priced) {
        std::vector<writing::Cell> total(table.columns.size());
        total.front() = "together";
        total.back() = list.cost > 0.0 || list.unpriced.empty()
                           ? writing::Cell(fixed(list.cost, 2), list.cost)
                           : writing::missing("nothing has a price");
        table.rows.push_back({total, writing::RowKind::total});
    }
    return table;
}

/// How to bring stock and water together where the solute burns skin; "" where nothing has to be said.
std::string pouring_words(const Preparation& made) {
    const Material& stock = *made.recipe.stock;
    const auto burns = [](const GhsEntry& entry) { return entry.statement == "H314"; };
    if (std::none_of(made.recipe.solute->ghs.begin(), made.recipe.solute->ghs.end(), burns)) return {};
    if (stock.components.size() == 1 && made.recipe.solute->phase == Substance::Phase::solid)
        return "goggles and gloves; it can get very hot as it dissolves: in small portions into cold stirred "
               "water, "
               "never water onto it, each after the last has cooled; stopper it when cold; ";
    return "goggles and gloves; pour it slowly into the water, never the other way round; ";
}

std::string keeping_words(const Preparation& made) {
    if (made.keeps == nullptr) return "for how long it keeps is not known here: made anew for each section";
    std::string words = made.keeps->days == 0 ? std::string("keeps for the day only")
                                              : fmt::format("keeps {} days", made.keeps->days);
    if (!made.keeps->why.empty()) words += ": " + made.keeps->why;
    return words;
}

writing::Table recipe_table(const StockList& list) {
    writing::Table table;
    table.caption = "Solutions to make, by weighing both parts";
    table.columns = {{.heading = "solution"},
                     {.heading = "in all", .align = writing::Align::right},
                     {.heading = "take"},
                     {.heading = "and water", .align = writing::Align::right},
                     {.heading = "how"}};
    for (const Preparation& made : list.preparations) {
        const Material& stock = *made.recipe.stock;
        std::string take = grams_text(made.stock_grams) + " " + stock.name;
        if (stock::is_poured(stock)) take += " (" + amount_text(made.stock_grams, stock) + ")";
        std::string how = pouring_words(made) + keeping_words(made);
        table.rows.push_back({made.recipe.solution->name, amount_cell(made.grams, *made.recipe.solution),
                              std::move(take), writing::Cell(grams_text(made.water_grams), made.water_grams),
                              std::move(how)});
    }
    table.remarks = {"Masses follow from the mass fractions of the catalogue; strengths, densities and how "
                     "long solutions keep are to be checked against the bottle in use."};
    return table;
}

std::string section_words(const Batch& batch) {
    if (batch.first_section == batch.last_section) return fmt::format("section {}", batch.first_section + 1);
    return fmt::format("sections {} to {}", batch.first_section + 1, batch.last_section + 1);
}

writing::Table day_table(const StockList& list) {
    struct Item {
        int section;
        const Preparation* made;
        const Batch* batch;
    };
    std::vector<Item> items;
    for (const Preparation& made : list.preparations)
        for (const Batch& batch : made.batches)
            items.push_back({batch.first_section, &made, &batch});
    std::stable_sort(items.begin(), items.end(),
                     [](const Item& a, const Item& b) { return a.section < b.section; });
    writing::Table table;
    table.caption = "What to make on which day";
    table.columns = {{.heading = "day"},
                     {.heading = "solution"},
                     {.heading = "for"},
                     {.heading = "make", .align = writing::Align::right},
                     {.heading = "from", .align = writing::Align::right},
                     {.heading = "and water", .align = writing::Align::right}};
    for (const Item& item : items) {
        const double stock_grams = item.batch->grams * item.made->recipe.stock_share;
        table.rows.push_back(
            {list.plan.days.empty() ? fmt::format("before section {}", item.section + 1)
                                    : text_with_weekday(list.plan.days[at(item.section)]),
             item.made->recipe.solution->name, section_words(*item.batch),
             amount_cell(item.batch->grams, *item.made->recipe.solution),
             writing::Cell(grams_text(stock_grams), stock_grams),
             writing::Cell(grams_text(item.batch->grams - stock_grams), item.batch->grams - stock_grams)});
    }
    return table;
}

std::vector<std::string> names_of(const std::vector<const Material*>& materials) {
    std::vector<std::string> names;
    for (const Material* material : materials)
        names.push_back(material->name);
    return names;
}

writing::Paragraph cost_words(const StockList& list, const stock::PriceList& prices) {
    std::string words =
        list.cost > 0.0 || list.unpriced.empty()
            ? fmt::format("The packs cost {} in all, {} for each student.", money(list.cost, prices),
                          money(list.cost / list.plan.runs(), prices))
            : std::string("What the packs cost is not known.");
    words += fmt::format(" {}.", capitalised(prices.words()));
    if (!prices.source.empty()) words += " Source: " + prices.source + ".";
    words +=
        " Of each material those packs are taken that cost least together, of several sizes where need be.";
    if (!list.unpriced.empty())
        words += " Without a price, and so not in the sum: " + join(names_of(list.unpriced), "; ") + ".";
    return {words};
}

} // namespace

writing::Document stock_list_document(const bench::Experiment& experiment, const StockList& list,
                                      const stock::PriceList& prices, const std::string& shelf_name) {
    const Assessment& route = experiment.assessment();
    writing::Document document;
    document.id = "stock_list";
    document.title = "Stock list: " + route.route().title;
    document.subtitle = class_words(list.plan);
    auto& blocks = document.blocks;
    blocks.push_back(charge_table(list));
    if (!list.waste.needs.empty() || !list.waste.unweighed.empty()) blocks.push_back(waste_table(list));
    blocks.push_back(order_table(list, prices, !shelf_name.empty()));
    if (!prices.packs.empty()) blocks.push_back(cost_words(list, prices));
    if (!list.preparations.empty()) {
        blocks.push_back(recipe_table(list));
        blocks.push_back(day_table(list));
    }
    blocks.push_back(equipment_table(experiment, list.plan));
    const auto reused = std::any_of(route.evaluation().credit.begin(), route.evaluation().credit.end(),
                                    [](double grams) { return grams > 0; });
    if (reused)
        blocks.push_back(writing::Paragraph{
            "What the route wins back is counted as needed all the same: it has to be there before it can be "
            "won back.",
            true});
    std::string method = fmt::format(
        "The class uses {} runs of the route with the extra ({} x {} x {}). Volumes go through the "
        "densities of the catalogue.",
        digits(list.plan.portions(), 4), list.plan.students, list.plan.sections,
        digits(1 + list.plan.extra, 3));
    if (!shelf_name.empty())
        method += fmt::format(
            " On the shelf: {}{}.", shelf_name,
            list.plan.days.empty() ? "; no day of class was given, so end dates were not checked" : "");
    blocks.push_back(writing::Paragraph{method, true});
    blocks.push_back(documents::usual_cautions());
    document.machine = documents::stock_list_tree(experiment, list, prices);
    document.rows = documents::stock_list_rows(list, prices);
    document.colophon = "routeweigh " + std::string(program_version());
    return document;
}

} // namespace routeweigh
