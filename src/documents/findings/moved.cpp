// SPDX-License-Identifier: MIT
// What moved elsewhere: hazards new on the bench, and reagents whose making no figure counts.
#include "documents/findings/finding.hpp"

#include "base/list.hpp"
#include "documents/bench.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <map>
#include <set>

namespace routeweigh::documents {
namespace {

using writing::Run;
using writing::strong;

/// More names than this make a sentence that nobody reads; the table has them all.
constexpr std::size_t most_names = 4;

struct Newcomers {
    std::vector<std::string> things, routes;

    void add(const std::string& thing, const std::string& route) {
        add_once(things, thing);
        add_once(routes, route);
    }
    std::string named() const {
        if (things.size() <= most_names + 1) return listed(things);
        std::vector<std::string> shown(things.begin(), things.begin() + most_names);
        shown.push_back(fmt::format("{} more", things.size() - most_names));
        return listed(shown);
    }
};

/// A reactant in a bottle of another strength, or a solvent that reacts elsewhere, is no newcomer.
std::set<const Substance*> substances_in(const std::vector<BenchBottle>& bench) {
    std::set<const Substance*> substances;
    for (const BenchBottle& bottle : bench)
        for (const Component& part : bottle.material->components)
            substances.insert(part.substance);
    return substances;
}

} // namespace

void find_moved(const ReportView& view, Statements& statements) {
    const auto base = bench_of(*view.baseline().assessment, view.baseline().classified.bottles);
    const auto base_substances = substances_in(base);
    std::map<BenchHazard, Newcomers> hazards;
    Newcomers reactants;
    for (const RouteView* route : view.others())
        for (const BenchBottle& bottle : bench_of(*route->assessment, route->classified.bottles)) {
            for (const Substance* reactant : bottle.reactants)
                if (!base_substances.contains(reactant)) reactants.add(reactant->name, route->id);
            if (find_on_bench(base, bottle.material) != nullptr) continue;
            for (const BenchHazard hazard : bottle.hazards)
                hazards[hazard].add(bottle.material->name, route->id);
        }
    // What a route without a feared reagent most often brings instead.
    for (const BenchHazard hazard : {BenchHazard::oxidising, BenchHazard::corrosive, BenchHazard::toxic,
                                     BenchHazard::long_term, BenchHazard::explosive}) {
        const auto found = hazards.find(hazard);
        if (found == hazards.end()) continue;
        const Newcomers& newcomers = found->second;
        statements.push_back(
            {Topic::moved,
             "moved.new_hazard",
             newcomers.routes,
             {strong(fmt::format("New on the bench, {}:", words(hazard))),
              Run(fmt::format(" {}, with {}.", newcomers.named(), listed(newcomers.routes)))}});
    }
    if (reactants.things.empty()) return;
    statements.push_back(
        {Topic::moved,
         "moved.made_elsewhere",
         reactants.routes,
         {strong("Made elsewhere, and in no figure:"),
          Run(fmt::format(
              " {} {} that {} does not need. What their making took and left behind is not assessed, here "
              "or for any other bottle.",
              counted(reactants.things.size(), "reactant", "reactants"), "(" + reactants.named() + ")",
              view.baseline().id))}});
}

} // namespace routeweigh::documents
