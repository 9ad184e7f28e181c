// SPDX-License-Identifier: MIT
// What moved elsewhere: hazards new on the bench, and reagents whose making no figure counts.
#include "documents/findings/finding.hpp"

#include "documents/bench.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace routeweigh::documents {
namespace {

using writing::Run;
using writing::strong;

/// More names than this make a sentence that nobody reads; the table has them all.
constexpr std::size_t most_substances = 4;

struct Newcomers {
    std::vector<std::string> substances, routes;

    void add(const std::string& substance, const std::string& route) {
        for (auto [list, name] : {std::pair{&substances, &substance}, {&routes, &route}})
            if (std::find(list->begin(), list->end(), *name) == list->end()) list->push_back(*name);
    }
    std::string named() const {
        if (substances.size() <= most_substances + 1) return listed(substances);
        std::vector<std::string> shown(substances.begin(), substances.begin() + most_substances);
        shown.push_back(fmt::format("{} more", substances.size() - most_substances));
        return listed(shown);
    }
};

} // namespace

void find_moved(const ReportView& view, Statements& statements) {
    const auto base = bench_of(*view.baseline().assessment);
    std::map<BenchHazard, Newcomers> hazards;
    Newcomers reactants;
    for (const RouteView* route : view.others())
        for (const BenchSubstance& item : bench_of(*route->assessment)) {
            if (find_on_bench(base, item.substance) != nullptr) continue;
            for (const BenchHazard hazard : item.hazards)
                hazards[hazard].add(item.substance->name, route->id);
            if (item.reactant) reactants.add(item.substance->name, route->id);
        }
    // What a route without a feared reagent most often brings instead.
    for (const BenchHazard hazard : {BenchHazard::oxidiser, BenchHazard::corrosive, BenchHazard::toxic,
                                     BenchHazard::long_term, BenchHazard::explosive}) {
        const auto found = hazards.find(hazard);
        if (found == hazards.end()) continue;
        const Newcomers& newcomers = found->second;
        statements.push_back(
            {Topic::moved,
             "moved.new_hazard",
             newcomers.routes,
             {strong(fmt::format("New on the bench, {} as a substance:", words(hazard))),
              Run(fmt::format(" {}, with {}.", newcomers.named(), listed(newcomers.routes)))}});
    }
    if (reactants.substances.empty()) return;
    statements.push_back(
        {Topic::moved,
         "moved.made_elsewhere",
         reactants.routes,
         {strong("Made elsewhere, and in no figure:"),
          Run(fmt::format(
              " {} {} that {} does not need. What their making took and left behind is not assessed, here "
              "or for any other bottle.",
              counted(reactants.substances.size(), "reactant", "reactants"), "(" + reactants.named() + ")",
              view.baseline().id))}});
}

} // namespace routeweigh::documents
