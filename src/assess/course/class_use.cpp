// SPDX-License-Identifier: MIT
#include "assess/course/class_use.hpp"

#include "assess/bench/cold_bath.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace routeweigh::course {
namespace {

constexpr double kilojoules_per_kilowatt_hour = 3600.0;

std::vector<Disposal> disposals_of(const streams::ClassWaste& waste, const stock::PriceList& prices) {
    std::vector<Disposal> disposals;
    const auto add = [&](const std::string& key, const std::string& container, double millilitres) {
        if (!(millilitres > 0.0)) return;
        const double* price = prices.disposal_of(key);
        disposals.push_back(
            {container, millilitres, price != nullptr ? std::optional(*price) : std::nullopt});
    };
    for (const streams::ContainerFit& fit : waste.fits)
        add(std::string(id_of(fit.container->kind)), fit.container->name, fit.volume);
    double own = 0.0;
    for (const streams::OwnBottle& bottle : waste.own_bottles)
        own += bottle.volume;
    add("own_bottle", "bottles of their own", own);
    return disposals;
}

Money money_of(const ClassUse& use, const House& house) {
    const stock::PriceList& prices = house.prices;
    Money money;
    money.packs = use.stock.cost;
    for (const Material* material : use.stock.unpriced)
        money.unpriced.push_back(material->name);
    for (const std::string& one : use.stock.waste.unweighed)
        money.unpriced.push_back(one);
    for (const stock::StockLine& line : use.stock.lines) {
        if (line.packs.empty()) continue;
        // By the price of the packs that are bought, whatever the shelf holds; spare stock is not used up.
        money.used += line.needed() / (1.0 + use.plan.extra) / line.packs.grams * line.packs.cost;
    }
    money.disposals = disposals_of(use.waste, prices);
    for (const Disposal& one : money.disposals)
        if (!one.price) money.unpriced.push_back("disposal of " + one.container);
    if (prices.electricity)
        money.power = *prices.electricity * use.one.socket.usual * use.runs() / kilojoules_per_kilowatt_hour;
    else
        money.unpriced.emplace_back("electricity");
    if (prices.water)
        money.water = *prices.water * (use.one.cooling.usual + use.one.suction.usual) * use.runs() / 1000.0;
    else
        money.unpriced.emplace_back("water");
    return money;
}

} // namespace

double Money::disposal() const {
    double sum = 0.0;
    for (const Disposal& one : disposals)
        sum += one.cost();
    return sum;
}

ClassUse use_of_class(const Assessment& route, const stock::ClassPlan& plan, const House& house) {
    ClassUse use;
    use.route = &route;
    use.plan = plan;
    use.waste = assess_class(route.route(), plan.runs(), house.waste);
    use.stock = make_stock_list(route, stock::waste_needs_of_run(route, use.waste.waste, house.waste), plan,
                                house.stockroom, house.catalogue, {}, house.prices);
    use.one = utilities::estimate_use(route.flat(), route.evaluation(), house.utilities);
    use.product = route.totals().product * plan.runs();
    use.waste_grams = route.totals().waste * plan.runs();
    use.money = money_of(use, house);
    return use;
}

std::vector<std::string> techniques_of(const Assessment& route, const utilities::RouteUse& use) {
    std::vector<std::string> found;
    const auto add = [&found](std::string technique) {
        if (std::find(found.begin(), found.end(), technique) == found.end())
            found.push_back(std::move(technique));
    };
    for (const utilities::StageUse& stage : use.stages) {
        if (stage.reflux)
            add("heating under reflux");
        else if (stage.heated)
            add("heating at a set temperature");
    }
    for (const Step& step : route.route().steps)
        for (const Stage& stage : step.stages) {
            const bench::ColdBath bath = bench::cold_bath(step, stage);
            if (bath == bench::ColdBath::ice || bath == bench::ColdBath::salt) add("cooling in ice");
            if (bath == bench::ColdBath::dry_ice) add("cooling in dry ice");
            for (const Charge& charge : stage.charges) {
                if (charge.role->name == "quench") add("quenching");
                if (charge.role->name == "recrystallisation solvent") add("recrystallisation");
                if (charge.role->name == "extraction") add("extraction");
                if (charge.role->name == "eluent" || charge.role->name == "adsorbent") add("chromatography");
                if (charge.role->name == "drying agent") add("drying a solution");
            }
            for (const Separation& separation : stage.separations)
                switch (separation.by) {
                case SeparationMethod::filtration:
                    add("suction filtration");
                    break;
                case SeparationMethod::decantation:
                    add("decanting");
                    break;
                case SeparationMethod::extraction:
                    add("extraction");
                    break;
                case SeparationMethod::distillation:
                    add("distillation");
                    break;
                case SeparationMethod::evaporation:
                    add("removing a solvent");
                    break;
                case SeparationMethod::drying:
                    add("drying to constant mass");
                    break;
                case SeparationMethod::sublimation:
                    add("sublimation");
                    break;
                }
        }
    return found;
}

} // namespace routeweigh::course
