// SPDX-License-Identifier: MIT
// The bipartite graph of a route: substances and reactions over all steps, and what graph algorithms find in
// it.
//
// A substance is one vertex per step; an intermediate that one step makes and another uses is one vertex for
// both, which is what joins the steps. Boost.Graph stays behind this header.
#pragma once

#include "chemistry/substance.hpp"

#include <span>
#include <string_view>
#include <utility>
#include <vector>

namespace routeweigh {

struct Route;

/// What a substance is to the route, read off the graph and the charges.
enum class GraphRole {
    product,      ///< of the route
    intermediate, ///< isolated in one step, used in another
    bought,       ///< charged from a bottle and used up by a reaction
    auxiliary,    ///< charged from a bottle and used by no reaction
    transient,    ///< made by one reaction, used up by another, charged by nobody
    by_product,   ///< made and used by nothing further
    missing       ///< used by a reaction, and nothing supplies it
};

std::string_view words(GraphRole role);

struct GraphSubstance {
    const Substance* substance;
    int step; ///< where it first occurs
    GraphRole role;
    bool regenerated; ///< charged and also made by a reaction of the same step
    bool reached;     ///< can be there, starting from what is charged
    int loop;         ///< number of the loop it lies on, or -1
};

struct GraphReaction {
    int step, stage, reaction;
    bool reached; ///< all it uses can be there
    int loop;
};

struct GraphEdge {
    int substance, reaction;
    double coefficient; ///< negative: used, positive: made
};

struct ReactionGraph {
    std::vector<GraphSubstance> substances;
    std::vector<GraphReaction> reactions;
    std::vector<GraphEdge> edges;
    int loop_count = 0; ///< strongly connected components of more than one vertex
};

ReactionGraph build_reaction_graph(const Route& route);

/// For every charge that another step supplies: which step. The key is (step, stage, charge).
struct ChargeSupply {
    int step, stage, charge;
    int fed_by;
};
std::vector<ChargeSupply> find_supplies(const Route& route);

/// Strongly connected components of a directed graph, each after all that it leads to.
std::vector<std::vector<int>> components_last_first(int vertex_count,
                                                    std::span<const std::pair<int, int>> edges);

} // namespace routeweigh
