// SPDX-License-Identifier: MIT
// What one experiment takes of a class and of the house: stock, waste by container, time, power, water,
// money.
//
// Only the stock and its packs hold the spare that the plan calls extra: all else is of the runs that are
// planned. Money has the currency of the price list; what the list does not price is named and counts as
// nothing.
#pragma once

#include "assess/assessment.hpp"
#include "assess/stock/stock_list.hpp"
#include "assess/streams/route_waste.hpp"
#include "assess/utilities/utility_estimate.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh::course {

/// What every experiment of a course is held against. All of it must outlive the results.
struct House {
    const Catalogue& catalogue;
    const streams::StreamRules& waste;
    const stock::Stockroom& stockroom;
    const stock::PriceList& prices;
    const utilities::UtilityData& utilities;
};

/// What one kind of container takes of the class, or what the bottles for single streams take together.
struct Disposal {
    std::string container;       ///< "halogenated organic liquid"
    double millilitres = 0;      ///< allowance included
    std::optional<double> price; ///< of a litre; none where the price list says nothing of it

    double cost() const { return price.value_or(0.0) * millilitres / 1000.0; }
};

struct Money {
    double packs = 0; ///< of the packs to buy
    double used = 0;  ///< of what the runs use up of them
    double power = 0, water = 0;
    std::vector<Disposal> disposals; ///< in the order of the local rules, then the bottles for single streams
    std::vector<std::string> unpriced; ///< "bromine", "disposal of halogenated organic"

    double disposal() const;
    double spent() const { return packs + disposal() + power + water; }
    double consumed() const { return used + disposal() + power + water; }
};

struct ClassUse {
    const Assessment* route = nullptr;
    stock::ClassPlan plan;
    stock::StockList stock;
    streams::ClassWaste waste;
    utilities::RouteUse one; ///< a single run of the route
    double product = 0;      ///< g of the class
    double waste_grams = 0;  ///< g of the class, gas and vapour with it
    Money money;

    double runs() const { return plan.runs(); }
};

ClassUse use_of_class(const Assessment& route, const stock::ClassPlan& plan, const House& house);

/// Techniques that the route practises, in the words of the trade: "suction filtration", "recrystallisation".
/// Read from roles, separations, temperatures and cold_bath(); what a file adds is not known here.
std::vector<std::string> techniques_of(const Assessment& route, const utilities::RouteUse& use);

} // namespace routeweigh::course
