// SPDX-License-Identifier: MIT
#include "assess/stock/stock_list.hpp"

#include "assess/mixture/mixture.hpp"
#include "assess/streams/treatment_supplies.hpp"
#include "base/index.hpp"
#include "base/list.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

namespace routeweigh::stock {
namespace {

StockLine& line_of(std::vector<StockLine>& lines, const Material& material) {
    const auto found = std::find_if(lines.begin(), lines.end(),
                                    [&](const auto& line) { return line.material == &material; });
    if (found != lines.end()) return *found;
    lines.emplace_back();
    lines.back().material = &material;
    return lines.back();
}

Need& need_of(std::vector<Need>& needs, const Material* material) {
    const auto found =
        std::find_if(needs.begin(), needs.end(), [&](const Need& need) { return need.material == material; });
    return found != needs.end() ? *found : needs.emplace_back(Need{material});
}

/// Each batch lasts as many days as the solution keeps; without days or without a shelf life each section
/// has its own.
std::vector<Batch> batches_of(double grams, const ShelfLife* keeps, const ClassPlan& plan) {
    std::vector<Batch> batches;
    const double share = grams / plan.sections;
    for (int section = 0; section < plan.sections; ++section) {
        const bool lasts =
            !batches.empty() && keeps != nullptr && !plan.days.empty() &&
            plan.days[at(section)] - plan.days[at(batches.back().first_section)] <= keeps->days;
        if (!lasts) batches.push_back({section, section, 0});
        batches.back().last_section = section;
        batches.back().grams += share;
    }
    return batches;
}

} // namespace

bool is_poured(const Material& material) {
    const Substance::Phase phase =
        material.is_neat() ? material.components.front().substance->phase : phase_of(mixture_of(material));
    return phase == Substance::Phase::liquid && material.density.has_value();
}

std::vector<Need> needs_of_run(const Assessment& route) {
    std::vector<Need> needs;
    const auto inflows = route.flat().inflows();
    for (std::size_t i = 0; i < inflows.size(); ++i) {
        const Inflow& inflow = inflows[i];
        if (inflow.fed_by >= 0 || inflow.as_used || inflow.role->is_trace()) continue;
        const Material* material =
            route.route().steps[at(inflow.step)].stages[at(inflow.stage)].charges[at(inflow.charge)].material;
        need_of(needs, material).per_run += route.evaluation().in[i];
    }
    return needs;
}

WasteNeeds waste_needs_of_run(const Assessment& route, const streams::RouteWaste& waste,
                              const streams::StreamRules& rules) {
    WasteNeeds all;
    for (const streams::QuenchPlan& plan : waste.quenches) {
        const double runs = route.evaluation().steps[at(plan.step)].scale;
        const std::string step = waste.quenches.size() > 1 ? plan.step_id : std::string();
        const auto supplies = streams::treatment_supplies(plan, rules.quench, rules.catalogue, step);
        for (const streams::TreatmentSupply& supply : supplies.weighed) {
            Need& need = need_of(all.needs, supply.material);
            need.per_run += runs * supply.grams;
            for (const std::string& use : supply.uses)
                add_once(need.uses, use);
        }
        for (const std::string& one : supplies.unweighed)
            add_once(all.unweighed, one);
    }
    return all;
}

StockList make_stock_list(const Assessment& route, WasteNeeds waste, const ClassPlan& plan,
                          const Stockroom& stockroom, const Catalogue& catalogue, const Shelf& shelf,
                          const PriceList& prices) {
    StockList list;
    list.plan = plan;
    list.needs = needs_of_run(route);
    list.waste = std::move(waste);
    std::optional<Day> last_day;
    if (!plan.days.empty()) last_day = *std::max_element(plan.days.begin(), plan.days.end());

    std::set<const Material*> at_hand;
    std::vector<Need> together;
    for (std::vector<Need>* needs : {&list.needs, &list.waste.needs})
        for (Need& need : *needs) {
            need.grams = need.per_run * plan.portions();
            need_of(together, need.material).grams += need.grams;
            at_hand.insert(need.material);
            line_of(list.lines, *need.material);
        }
    for (const Pack& pack : prices.packs)
        at_hand.insert(pack.material);
    for (const ShelfItem& item : shelf.items)
        at_hand.insert(item.material);

    for (const Need& need : together) {
        const double ready = std::min(need.grams, shelf.grams_of(*need.material, last_day));
        const bool sold = !prices.packs_of(*need.material).empty();
        const auto recipe = sold ? std::nullopt : recipe_of(*need.material, stockroom, catalogue, at_hand);
        if (!recipe) {
            line_of(list.lines, *need.material).as_it_is += need.grams;
            continue;
        }
        line_of(list.lines, *need.material).as_it_is += ready;
        Preparation made;
        made.recipe = *recipe;
        made.grams = need.grams - ready;
        if (made.grams <= 0) continue;
        made.stock_grams = made.grams * recipe->stock_share;
        made.water_grams = made.grams - made.stock_grams;
        made.keeps = stockroom.shelf_life(*recipe->solute);
        made.batches = batches_of(made.grams, made.keeps, plan);
        line_of(list.lines, *recipe->stock).for_making += made.stock_grams;
        line_of(list.lines, *recipe->water).for_making += made.water_grams;
        list.preparations.push_back(made);
    }
    list.lines.erase(std::remove_if(list.lines.begin(), list.lines.end(),
                                    [](const StockLine& line) { return !(line.needed() > 0); }),
                     list.lines.end());
    for (StockLine& line : list.lines) {
        line.from_tap = stockroom.from_tap.contains(line.material);
        line.on_shelf = shelf.grams_of(*line.material, last_day);
        line.shelf_expired = shelf.has_expired(*line.material, last_day);
        line.to_get = line.from_tap ? 0 : std::max(0.0, line.needed() - line.on_shelf);
        line.packs = choose_packs(prices, *line.material, line.to_get);
        list.cost += line.packs.cost;
        if (line.to_get > 0 && line.packs.empty()) list.unpriced.push_back(line.material);
    }
    return list;
}

} // namespace routeweigh::stock
