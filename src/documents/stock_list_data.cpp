// SPDX-License-Identifier: MIT
#include "documents/stock_list_data.hpp"

#include "assess/bench/equipment.hpp"
#include "documents/shared_figure.hpp"
#include "documents/version.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace routeweigh::documents {
namespace {

using stock::Batch;
using stock::Need;
using stock::Preparation;
using stock::StockLine;
using stock::StockList;

const Need* need_of(const StockList& list, const Material* material) {
    const auto found = std::find_if(list.needs.begin(), list.needs.end(),
                                    [&](const Need& need) { return need.material == material; });
    return found == list.needs.end() ? nullptr : &*found;
}

writing::MachineTree material_amount(double grams, const Material& material) {
    return stock::is_poured(material) ? writing::MachineTree(grams / *material.density)
                                      : writing::MachineTree();
}

writing::MachineTree stock_need_tree(const Need& need) {
    return writing::MachineObject{{"material", need.material->name},
                                  {"grams_per_run", need.per_run},
                                  {"grams", need.grams},
                                  {"millilitres", material_amount(need.grams, *need.material)}};
}

writing::MachineTree waste_need_tree(const Need& need) {
    return writing::MachineObject{{"material", need.material->name},
                                  {"grams_per_run", need.per_run},
                                  {"grams", need.grams},
                                  {"for", writing::text_list(need.uses)}};
}

writing::MachineTree stock_line_tree(const StockLine& line) {
    writing::MachineList packs;
    for (const stock::PackCount& one : line.packs.packs)
        packs.emplace_back(writing::MachineObject{{"pack", one.pack->size}, {"count", one.count}});
    return writing::MachineObject{
        {"material", line.material->name},
        {"as_it_is_grams", line.as_it_is},
        {"for_making_grams", line.for_making},
        {"needed_millilitres", material_amount(line.needed(), *line.material)},
        {"on_shelf_grams", line.on_shelf},
        {"to_get_grams", line.to_get},
        {"from_tap", line.from_tap},
        {"packs", std::move(packs)},
        {"left_over_grams", line.packs.left_over},
        {"cost", line.packs.empty() ? writing::MachineTree() : writing::MachineTree(line.packs.cost)}};
}

writing::MachineTree preparation_tree(const Preparation& made) {
    writing::MachineList batches;
    for (const Batch& batch : made.batches)
        batches.emplace_back(writing::MachineObject{{"first_section", batch.first_section + 1},
                                                    {"last_section", batch.last_section + 1},
                                                    {"grams", batch.grams}});
    return writing::MachineObject{{"solution", made.recipe.solution->name},
                                  {"grams", made.grams},
                                  {"stock", made.recipe.stock->name},
                                  {"stock_grams", made.stock_grams},
                                  {"water_grams", made.water_grams},
                                  {"keeps_days", made.keeps != nullptr
                                                     ? writing::MachineTree(made.keeps->days)
                                                     : writing::MachineTree()},
                                  {"batches", std::move(batches)}};
}

writing::MachineList trees_of(const auto& items, auto tree) {
    writing::MachineList list;
    for (const auto& item : items)
        list.push_back(tree(item));
    return list;
}

} // namespace

writing::MachineTree stock_list_tree(const bench::Experiment& experiment, const StockList& list,
                                     const stock::PriceList& prices) {
    const Route& route = experiment.route();
    const auto piece_tree = [&](const bench::Equipment& one) -> writing::MachineTree {
        return writing::MachineObject{{"piece", one.name},
                                      {"for", writing::text_list(one.uses)},
                                      {"in_a_section", one.pieces(list.plan.students)}};
    };
    return writing::MachineObject{
        {"routeweigh", std::string(program_version())},
        {"route", route.id},
        {"students", list.plan.students},
        {"sections", list.plan.sections},
        {"extra", list.plan.extra},
        {"days", trees_of(list.plan.days, [](Day day) { return writing::MachineTree(text_of(day)); })},
        {"needs", trees_of(list.needs, stock_need_tree)},
        {"for_waste", trees_of(list.waste.needs, waste_need_tree)},
        {"for_waste_unweighed", writing::text_list(list.waste.unweighed)},
        {"equipment", trees_of(bench::equipment_of(experiment), piece_tree)},
        {"lines", trees_of(list.lines, stock_line_tree)},
        {"recipes", trees_of(list.preparations, preparation_tree)},
        {"cost", list.cost},
        {"packs_price", prices.packs.empty() ? writing::MachineTree()
                                             : machine_of(packs_of_class(route, list, prices), Edition::key)},
        {"currency", prices.currency},
        {"prices_dated", prices.date},
        {"prices_invented", prices.invented}};
}

writing::DataRows stock_list_rows(const StockList& list, const stock::PriceList& prices) {
    writing::DataRows data;
    data.columns = {"material", "grams per run", "needed g", "needed mL", "on shelf g",
                    "to get g", "packs",         "cost",     "currency"};
    for (const StockLine& line : list.lines) {
        const Need* need = need_of(list, line.material);
        const auto number = [](bool known, double value) {
            return known ? writing::DataCell(value) : writing::DataCell();
        };
        const bool poured = stock::is_poured(*line.material);
        const bool packed = !line.packs.empty();
        data.rows.push_back(
            {line.material->name, number(need != nullptr, need != nullptr ? need->per_run : 0), line.needed(),
             number(poured, poured ? line.needed() / *line.material->density : 0), line.on_shelf, line.to_get,
             line.packs.words(), number(packed, line.packs.cost), prices.currency});
    }
    return data;
}

} // namespace routeweigh::documents
