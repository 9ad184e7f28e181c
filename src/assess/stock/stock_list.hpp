// SPDX-License-Identifier: MIT
// What a class needs of every material: to buy or take from the shelf, to make, and on which day.
//
// The amounts are those of the ledger times the runs of the class times (1 + extra). A solution that is made
// is replaced by what it is made of, so that the substances still add up to the same. What the waste plan
// asks to have at hand before a stream leaves the bench is fetched with the rest.
#pragma once

#include "assess/assessment.hpp"
#include "assess/stock/pack_choice.hpp"
#include "assess/stock/shelf.hpp"
#include "assess/stock/stockroom.hpp"
#include "assess/streams/route_waste.hpp"
#include "base/day.hpp"

#include <string>
#include <vector>

namespace routeweigh::stock {

struct ClassPlan {
    int students = 1; ///< in each section, each with a run of the route of their own
    int sections = 1;
    double extra = 0;      ///< share of spare stock made ready for spills and repeats; never of runs
    double session = 0;    ///< min that a section meets; 0: not said
    std::vector<Day> days; ///< one for each section, in order; or none

    double runs() const { return static_cast<double>(students) * sections; }
    double portions() const { return runs() * (1 + extra); } ///< runs that stock is made ready for
};

/// A material as the route charges it, or as its waste plan asks for it, g.
struct Need {
    const Material* material = nullptr;
    double per_run = 0;
    double grams = 0;                   ///< of the class, extra included
    std::vector<std::string> uses = {}; ///< in the waste plan: "base for mother liquor"
};

/// What makes the streams of one run ready for their containers.
struct WasteNeeds {
    std::vector<Need> needs;
    std::vector<std::string> unweighed; ///< "pH paper"
};

/// A batch of a solution: made on one day for the sections from first to last.
struct Batch {
    int first_section = 0, last_section = 0; ///< from 0
    double grams = 0;
};

struct Preparation {
    Recipe recipe;
    double grams = 0; ///< to make; less than the need where the shelf holds some
    double stock_grams = 0, water_grams = 0;
    const ShelfLife* keeps = nullptr;
    std::vector<Batch> batches;
};

/// What the stockroom has to have: what is charged as it is, and what solutions are made of.
struct StockLine {
    const Material* material = nullptr;
    double as_it_is = 0;   ///< g for the runs of the class and their waste
    double for_making = 0; ///< g for solutions
    double on_shelf = 0;   ///< g
    double to_get = 0;     ///< g; 0 for what the shelf covers and for water from the tap
    bool from_tap = false;
    bool shelf_expired = false; ///< some of it on the shelf is past its date
    PackChoice packs;

    double needed() const { return as_it_is + for_making; }
};

struct StockList {
    ClassPlan plan;
    std::vector<Need> needs;               ///< as charged, in order of first use
    WasteNeeds waste;                      ///< of the class
    std::vector<StockLine> lines;          ///< in the same order, then what is only for making
    std::vector<Preparation> preparations; ///< of the solutions that are made
    double cost = 0;                       ///< of the packs
    std::vector<const Material*> unpriced; ///< to get, and the price list has no pack
};

/// The stockroom must outlive the result. \param waste  of waste_needs_of_run()
StockList make_stock_list(const Assessment& route, WasteNeeds waste, const ClassPlan& plan,
                          const Stockroom& stockroom, const Catalogue& catalogue, const Shelf& shelf,
                          const PriceList& prices);

/// Grams of every material charged in one run of the route, in order of first use: what is bought, not what
/// another step makes, what the air gives or what is only a trace.
std::vector<Need> needs_of_run(const Assessment& route);

/// \param waste  of that route by these rules
WasteNeeds waste_needs_of_run(const Assessment& route, const streams::RouteWaste& waste,
                              const streams::StreamRules& rules);

/// Would one pour it (mL) or weigh it (g)?
bool is_poured(const Material& material);

} // namespace routeweigh::stock
