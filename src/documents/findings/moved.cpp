// SPDX-License-Identifier: MIT
// What moved elsewhere: hazards new on the bench, and reagents whose making no figure counts.
#include "documents/findings/finding.hpp"

#include "documents/bench.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace routeweigh::documents {
namespace {

using writing::Run;
using writing::strong;

/// A substance that other routes bring and the baseline does not have.
struct Newcomer {
    const Substance* substance;
    std::vector<std::string> routes;
};

void add_route(std::vector<Newcomer>& list, const Substance* substance, const std::string& route) {
    const auto found = std::find_if(list.begin(), list.end(),
                                    [&](const Newcomer& entry) { return entry.substance == substance; });
    if (found == list.end())
        list.push_back({substance, {route}});
    else
        found->routes.push_back(route);
}

std::string named(const std::vector<Newcomer>& list, bool with_routes) {
    std::vector<std::string> names;
    for (const Newcomer& entry : list)
        names.push_back(with_routes ? fmt::format("{} ({})", entry.substance->name, listed(entry.routes))
                                    : entry.substance->name);
    return listed(names);
}

std::vector<std::string> routes_of(const std::vector<Newcomer>& list) {
    std::vector<std::string> routes;
    for (const Newcomer& entry : list)
        for (const std::string& route : entry.routes)
            if (std::find(routes.begin(), routes.end(), route) == routes.end()) routes.push_back(route);
    return routes;
}

} // namespace

void find_moved(const ReportView& view, Statements& statements) {
    const auto base = bench_of(*view.baseline().assessment);
    // Oxidisers and corrosives are what a route without a feared reagent most often brings instead.
    std::map<BenchHazard, std::vector<Newcomer>> hazards;
    std::vector<Newcomer> reactants;
    for (const RouteView* route : view.others())
        for (const BenchSubstance& item : bench_of(*route->assessment)) {
            if (find_on_bench(base, item.substance) != nullptr) continue;
            for (const BenchHazard hazard : item.hazards)
                add_route(hazards[hazard], item.substance, route->id);
            if (item.reactant) add_route(reactants, item.substance, route->id);
        }
    const bool name_routes = view.routes.size() > 2;
    for (const BenchHazard hazard : {BenchHazard::oxidiser, BenchHazard::corrosive, BenchHazard::toxic,
                                     BenchHazard::long_term, BenchHazard::explosive}) {
        const auto found = hazards.find(hazard);
        if (found == hazards.end()) continue;
        statements.push_back({"moved.new_hazard",
                              routes_of(found->second),
                              {strong(fmt::format("New on the bench, {}:", words(hazard))),
                               Run(fmt::format(" {}.", named(found->second, name_routes)))}});
    }
    if (reactants.empty()) return;
    statements.push_back(
        {"moved.made_elsewhere",
         routes_of(reactants),
         {strong("Made elsewhere, and in no figure:"),
          Run(fmt::format(" the making of what is bought. Reactants that {} does not need: {}.",
                          view.baseline().id, named(reactants, name_routes)))}});
}

} // namespace routeweigh::documents
