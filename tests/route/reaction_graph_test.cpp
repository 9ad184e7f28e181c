// SPDX-License-Identifier: MIT
#include "route/reaction_graph.hpp"

#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

const Catalogue& graph_bench() {
    static const Catalogue catalogue =
        catalogue_of({"A | C5H10", "B | C5H10", "C | C5H10", "D | C5H10", "E | C5H10", "I | C5H10",
                      "J | C10H20", "P | C15H30", "water | H2O | liquid"});
    return catalogue;
}

const GraphSubstance* find(const ReactionGraph& graph, std::string_view name) {
    const auto found =
        std::find_if(graph.substances.begin(), graph.substances.end(),
                     [&](const GraphSubstance& entry) { return entry.substance->name == name; });
    return found == graph.substances.end() ? nullptr : &*found;
}

GraphRole role(const ReactionGraph& graph, std::string_view name) {
    const GraphSubstance* entry = find(graph, name);
    REQUIRE(entry != nullptr);
    return entry->role;
}

} // namespace

TEST_CASE("bought, transient, by-product, auxiliary and product are read off the graph") {
    const Built built(one_pot(
        "4-bromoacetanilide", "acetanilide",
        "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water",
        {charge("acetanilide", "10 mmol", "substrate"), charge("hydrobromic acid 48 %", "12 mmol", "reagent"),
         charge("hydrogen peroxide", "13 mmol", "oxidant"), charge("ethanol", "5 g", "solvent")},
        {reaction(peroxide_equation), reaction(bromination_equation)}));
    const ReactionGraph graph = build_reaction_graph(built.route);
    CHECK(role(graph, "acetanilide") == GraphRole::bought);
    CHECK(role(graph, "hydrogen bromide") == GraphRole::bought);
    CHECK(role(graph, "hydrogen peroxide") == GraphRole::bought);
    CHECK(role(graph, "bromine") == GraphRole::transient);
    CHECK(role(graph, "ethanol") == GraphRole::auxiliary);
    CHECK(role(graph, "4-bromoacetanilide") == GraphRole::product);
    // Water comes with the acid and is used by no reaction.
    CHECK(role(graph, "water") == GraphRole::auxiliary);
    CHECK(find(graph, "hydrogen bromide")->regenerated);
    CHECK(find(graph, "water")->regenerated);
    CHECK_FALSE(find(graph, "bromine")->regenerated);
    CHECK(std::all_of(graph.substances.begin(), graph.substances.end(),
                      [](const auto& entry) { return entry.reached; }));
    CHECK(std::all_of(graph.reactions.begin(), graph.reactions.end(),
                      [](const auto& entry) { return entry.reached; }));
    // The loop of hydrogen bromide and bromine through both reactions.
    CHECK(graph.loop_count == 1);
    CHECK(find(graph, "bromine")->loop == 0);
    CHECK(find(graph, "hydrogen bromide")->loop == 0);
    CHECK(find(graph, "acetanilide")->loop == -1);
    CHECK(find(graph, "4-bromoacetanilide")->loop == -1);
    CHECK(graph.reactions[0].loop == 0);
    CHECK(graph.reactions[1].loop == 0);
}

TEST_CASE("what nothing uses further is a by-product") {
    const Built built(
        one_pot("4-bromoacetanilide", "acetanilide", bromination_equation,
                {charge("acetanilide", "10 mmol", "substrate"), charge("bromine", "10 mmol", "reagent")},
                {reaction(bromination_equation)}));
    const ReactionGraph graph = build_reaction_graph(built.route);
    CHECK(role(graph, "hydrogen bromide") == GraphRole::by_product);
    CHECK(graph.loop_count == 0);
    CHECK(graph.substances.size() == 4);
    REQUIRE(graph.edges.size() == 4);
    double sum = 0.0;
    for (const GraphEdge& edge : graph.edges)
        sum += edge.coefficient;
    CHECK(sum == 0); // two used, two made
}

TEST_CASE("an intermediate joins two steps by one vertex; the same solvent in two steps is two") {
    const Built built(
        route("B",
              {step("I", "A", "A -> I",
                    {stage("reaction", {charge("A", "1 mol", "substrate"), charge("water", "1 g", "solvent")},
                           {reaction("A -> I")})}),
               step("B", "I", "I -> B",
                    {stage("reaction", {charge("I", "1 mol", "substrate"), charge("water", "1 g", "solvent")},
                           {reaction("I -> B")})})}),
        graph_bench());
    const ReactionGraph graph = build_reaction_graph(built.route);
    const auto count = [&](std::string_view name) {
        return std::count_if(graph.substances.begin(), graph.substances.end(),
                             [&](const GraphSubstance& entry) { return entry.substance->name == name; });
    };
    CHECK(count("I") == 1);
    CHECK(count("water") == 2);
    CHECK(role(graph, "I") == GraphRole::intermediate);
    CHECK(role(graph, "B") == GraphRole::product);
    CHECK(find(graph, "B")->reached);
}

TEST_CASE("what is not supplied is missing, and what depends on it is not reached") {
    // Built by hand, for a file like this is refused.
    const Built built(one_pot("B", "A", "A -> B", {charge("A", "1 mol", "substrate")}, {reaction("A -> B")}),
                      graph_bench());
    Route broken = built.route;
    const Substance *c = graph_bench().find_substance("C"), *d = graph_bench().find_substance("D"),
                    *e = graph_bench().find_substance("E");
    const auto add = [&](const Substance* from, const Substance* to) {
        Reaction reaction;
        reaction.equation.parts = {{from, -1.0}, {to, 1.0}};
        broken.steps[0].stages[0].reactions.push_back(reaction);
    };
    add(c, d);
    add(d, e);
    ReactionGraph graph = build_reaction_graph(broken);
    CHECK(role(graph, "C") == GraphRole::missing);
    CHECK(role(graph, "D") == GraphRole::transient);
    CHECK_FALSE(find(graph, "D")->reached);
    CHECK_FALSE(graph.reactions[1].reached);
    CHECK_FALSE(graph.reactions[2].reached);
    CHECK(graph.reactions[0].reached);
    add(e, c); // now a loop that nothing starts
    graph = build_reaction_graph(broken);
    CHECK(role(graph, "C") == GraphRole::transient);
    CHECK_FALSE(find(graph, "C")->reached);
    CHECK(graph.loop_count == 1);
    CHECK(find(graph, "D")->loop == 0);
}

TEST_CASE("charges that another step supplies") {
    const Built built(
        route("J", {step("I", "A", "A -> I",
                         {stage("reaction", {charge("A", "1 mol", "substrate")}, {reaction("A -> I")})}),
                    step("J", "I", "I + B -> J",
                         {stage("reaction",
                                {charge("B", "2 mol", "reagent"), charge("I", "1 mol", "substrate"),
                                 charge("I", "1 mol", "substrate", R"("bought": true)")},
                                {reaction("I + B -> J")})})}),
        graph_bench());
    const auto supplies = find_supplies(built.route);
    REQUIRE(supplies.size() == 1);
    CHECK(supplies[0].step == 1);
    CHECK(supplies[0].stage == 0);
    CHECK(supplies[0].charge == 1);
    CHECK(supplies[0].fed_by == 0);
}

TEST_CASE("steps that feed each other form a loop of the graph") {
    const Built built(
        route("D", {step("I", "A", "A -> I",
                         {stage("reaction",
                                {charge("A", "10 mmol", "substrate"), charge("B", "1 mmol", "reagent")},
                                {reaction("A -> I"), reaction("B -> C")})}),
                    step("B", "I", "I -> B",
                         {stage("reaction", {charge("I", "10 mmol", "substrate")}, {reaction("I -> B")})}),
                    step("D", "B", "B -> D",
                         {stage("reaction", {charge("B", "5 mmol", "substrate")}, {reaction("B -> D")})})}),
        graph_bench());
    const ReactionGraph graph = build_reaction_graph(built.route);
    CHECK(role(graph, "B") == GraphRole::intermediate);
    CHECK(role(graph, "I") == GraphRole::intermediate);
    CHECK(graph.loop_count == 0); // B goes into step 1 as a reagent that no way leads from to I
    CHECK(built.flat.scale_plan().has_loop());
}

TEST_CASE("components come after all that they lead to") {
    // 0 -> 1 -> 2 -> 1, 2 -> 3; 4 apart
    const std::vector<std::pair<int, int>> edges{{0, 1}, {1, 2}, {2, 1}, {2, 3}};
    const auto groups = components_last_first(5, edges);
    std::map<int, std::size_t> place;
    for (std::size_t g = 0; g < groups.size(); ++g)
        for (const int vertex : groups[g])
            place[vertex] = g;
    CHECK(groups.size() == 4);
    CHECK(place[1] == place[2]);
    CHECK(place[3] < place[2]);
    CHECK(place[1] < place[0]);
    CHECK(place.size() == 5);
    CHECK(components_last_first(0, {}).empty());
}

TEST_CASE("every role has its words") {
    std::map<std::string, int> words_seen;
    for (const GraphRole each :
         {GraphRole::product, GraphRole::intermediate, GraphRole::bought, GraphRole::auxiliary,
          GraphRole::transient, GraphRole::by_product, GraphRole::missing})
        ++words_seen[std::string(words(each))];
    CHECK(words_seen.size() == 7);
    CHECK(!words_seen.contains(""));
}
