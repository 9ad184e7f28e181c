// SPDX-License-Identifier: MIT
// Prints what the graph algorithms of the program find in routes read from standard input, for
// check_graph.py.
//
// A route is lines of words, ended by a line "end":
//   product SUBSTANCE              of the route; substances are small numbers
//   step SUBSTANCE                 begins a step that makes it
//   charge SUBSTANCE [bought]      a neat material of the step
//   reaction -1 -2 +3              uses 1 and 2, makes 3
// The answer is one line of JSON a route.
#include "route/reaction_graph.hpp"
#include "route/route.hpp"
#include "route/scale.hpp"

#include <fmt/core.h>

#include <cstddef>
#include <deque>
#include <iostream>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace routeweigh;

/// Substances and their neat materials that stay where they are.
class Shelf {
  public:
    const Substance* substance(std::size_t number) {
        return materials_.at(number).components.front().substance;
    }
    const Material* material(std::size_t number) { return &materials_.at(number); }

    explicit Shelf(std::size_t count) {
        for (std::size_t i = 0; i < count; ++i) {
            substances_.emplace_back().id = std::to_string(i);
            materials_.emplace_back().components = {{&substances_.back(), 1.0, false}};
        }
    }

  private:
    std::deque<Substance> substances_;
    std::deque<Material> materials_;
};

void add_line(Route& route, Shelf& shelf, std::istringstream words) {
    std::string kind;
    words >> kind;
    if (kind == "reaction") {
        Reaction& reaction = route.steps.back().stages.back().reactions.emplace_back();
        for (std::string part; words >> part;)
            reaction.equation.parts.push_back(
                {shelf.substance(std::stoul(part.substr(1))), part[0] == '-' ? -1.0 : 1.0});
        return;
    }
    std::size_t number = 0;
    std::string word;
    words >> number >> word;
    if (kind == "product") route.product = shelf.substance(number);
    if (kind == "step") {
        Step& step = route.steps.emplace_back();
        step.product = shelf.substance(number);
        step.stages.emplace_back();
    }
    if (kind == "charge") {
        Charge& charge = route.steps.back().stages.back().charges.emplace_back();
        charge.material = shelf.material(number);
        charge.bought = word == "bought";
    }
}

template<class Items, class Print>
std::string list(const Items& items, const Print& print) {
    std::string text;
    for (const auto& item : items)
        text += (text.empty() ? "" : ", ") + print(item);
    return "[" + text + "]";
}

std::string answer(const Route& route) {
    const ReactionGraph graph = build_reaction_graph(route);
    const std::string substances = list(graph.substances, [](const GraphSubstance& s) {
        return fmt::format("[{}, {}, \"{}\", {}, {}, {}]", s.substance->id, s.step, words(s.role),
                           s.regenerated, s.reached, s.loop);
    });
    const std::string reactions = list(graph.reactions, [](const GraphReaction& r) {
        return fmt::format("[{}, {}, {}, {}]", r.step, r.reaction, r.reached, r.loop);
    });
    const std::string edges = list(graph.edges, [](const GraphEdge& e) {
        return fmt::format("[{}, {}, {}]", e.substance, e.reaction, e.coefficient);
    });
    std::vector<std::pair<int, int>> feeds;
    for (const ChargeSupply& supply : find_supplies(route))
        feeds.emplace_back(supply.fed_by, supply.step);
    const auto groups = components_last_first(static_cast<int>(route.steps.size()), feeds);
    return fmt::format(
        R"({{"substances": {}, "reactions": {}, "edges": {}, "feeds": {}, "groups": {}}})", substances,
        reactions, edges,
        list(feeds, [](const auto& feed) { return fmt::format("[{}, {}]", feed.first, feed.second); }),
        list(groups, [](const std::vector<int>& group) {
            return list(group, [](int step) { return std::to_string(step); });
        }));
}

} // namespace

int main() {
    Shelf shelf(100);
    Route route;
    for (std::string line; std::getline(std::cin, line);) {
        if (line != "end") {
            add_line(route, shelf, std::istringstream(line));
            continue;
        }
        fmt::print("{}\n", answer(route));
        route = {};
    }
}
