// SPDX-License-Identifier: MIT
// The reaction graph of each route, and what the graph says of every substance.
#include "base/index.hpp"
#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"
#include "route/overall_equation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

using Style = writing::Graph::Style;

Style style_of(GraphRole role) {
    switch (role) {
    case GraphRole::product:
        return Style::goal;
    case GraphRole::bought:
        return Style::start;
    case GraphRole::transient:
        return Style::transient;
    case GraphRole::by_product:
        return Style::side;
    case GraphRole::auxiliary:
    case GraphRole::intermediate:
    case GraphRole::missing:
        break;
    }
    return Style::plain;
}

std::string label_of(std::size_t reaction) {
    return fmt::format("R{}", reaction + 1);
}

const Reaction& reaction_of(const RouteView& route, const GraphReaction& entry) {
    return route.route().steps[at(entry.step)].stages[at(entry.stage)].reactions[at(entry.reaction)];
}

bool has_role(const RouteView& route, GraphRole role) {
    return std::any_of(route.graph.substances.begin(), route.graph.substances.end(),
                       [role](const GraphSubstance& entry) { return entry.role == role; });
}

writing::Graph graph_of(const RouteView& route) {
    const ReactionGraph& graph = route.graph;
    writing::Graph chart;
    std::vector<int> box_of(graph.substances.size(), -1);
    for (const GraphEdge& edge : graph.edges)
        box_of[at(edge.substance)] = 0; // what no reaction touches is listed and not drawn
    for (std::size_t s = 0; s < graph.substances.size(); ++s) {
        if (box_of[s] < 0) continue;
        box_of[s] = static_cast<int>(chart.boxes.size());
        chart.boxes.push_back({graph.substances[s].substance->name, style_of(graph.substances[s].role)});
    }
    for (std::size_t r = 0; r < graph.reactions.size(); ++r)
        chart.squares.push_back({label_of(r), reaction_of(route, graph.reactions[r]).title});
    for (const GraphEdge& edge : graph.edges) {
        const double count = std::abs(edge.coefficient);
        chart.arrows.push_back({box_of[at(edge.substance)], edge.reaction, edge.coefficient < 0.0,
                                count == 1.0 ? std::string() : fmt::format("{:g}", count)});
    }
    chart.keys = {{Style::start, "bought"},
                  {Style::transient, "transient: made by one reaction, used by another, charged by nobody"},
                  {Style::side, "by-product: made, used by no reaction"},
                  {Style::plain, has_role(route, GraphRole::intermediate) ? "intermediate"
                                                                          : "charged, used by no reaction"},
                  {Style::goal, "product"}};
    std::erase_if(chart.keys, [&](const auto& key) {
        return std::none_of(chart.boxes.begin(), chart.boxes.end(),
                            [&](const auto& box) { return box.style == key.style; });
    });
    return chart;
}

/// What no reaction uses, without repetition; a substance of two steps has a vertex in each.
std::string never_used(const RouteView& route) {
    std::vector<std::string> names;
    for (const GraphSubstance& entry : route.graph.substances) {
        std::string name = entry.substance->name;
        if (entry.role != GraphRole::auxiliary) continue;
        if (entry.regenerated) name += " (also made by a reaction)";
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
    }
    return join(names, ", ");
}

/// Reactions of one stage that feed each other in a circle, with the substances they pass on. Stages are
/// taken one by one, because a quench has no part in the loop that it ends.
struct Loop {
    std::vector<std::string> substances, reactions;
};

std::vector<Loop> loops_of(const ReactionGraph& graph, int step, int stage) {
    const int substances = static_cast<int>(graph.substances.size());
    std::vector<std::pair<int, int>> edges;
    for (const GraphEdge& edge : graph.edges) {
        const GraphReaction& reaction = graph.reactions[at(edge.reaction)];
        if (reaction.step != step || reaction.stage != stage) continue;
        const int square = substances + edge.reaction;
        if (edge.coefficient < 0.0)
            edges.emplace_back(edge.substance, square);
        else
            edges.emplace_back(square, edge.substance);
    }
    std::vector<Loop> loops;
    const int vertices = substances + static_cast<int>(graph.reactions.size());
    for (const std::vector<int>& component : components_last_first(vertices, edges)) {
        if (component.size() < 2) continue;
        Loop loop;
        for (const int vertex : component) {
            if (vertex < substances)
                loop.substances.push_back(graph.substances[at(vertex)].substance->name);
            else
                loop.reactions.push_back(label_of(at(vertex - substances)));
        }
        std::sort(loop.reactions.begin(), loop.reactions.end());
        loops.push_back(std::move(loop));
    }
    return loops;
}

void add_loops(const RouteView& route, writing::KeyValueList& list) {
    for (std::size_t s = 0; s < route.route().steps.size(); ++s)
        for (std::size_t g = 0; g < route.route().steps[s].stages.size(); ++g)
            for (const Loop& loop : loops_of(route.graph, static_cast<int>(s), static_cast<int>(g)))
                list.entries.push_back(
                    {"loop",
                     fmt::format(
                         "{} hand {} round: what one of them uses another makes again; what has to be put "
                         "in all the same stands in the overall equation",
                         listed(loop.reactions), listed(loop.substances))});
}

/// The reactions that add up to the overall equation of a step, and whether a leaner one follows from them.
writing::Text overall_text(const RouteView& route, std::size_t index) {
    const Step& step = route.route().steps[index];
    const OverallProof proof = prove_overall(step);
    writing::Text text{writing::code(step.overall.text)};
    std::vector<std::string> runs;
    std::size_t number = 0, local = 0;
    for (const GraphReaction& entry : route.graph.reactions) {
        if (entry.step == static_cast<int>(index)) {
            if (local < proof.combination.size() && std::abs(proof.combination[local]) > 1e-9)
                runs.push_back(
                    fmt::format("{:.4g}\u00A0\u00D7\u00A0{}", proof.combination[local], label_of(number)));
            ++local;
        }
        ++number;
    }
    if (proof.proved) text.runs.push_back(writing::Run("; follows from " + join(runs, " + ")));
    if (proof.best_atom_economy > proof.atom_economy + 0.005)
        text.runs.push_back(
            writing::Run(fmt::format("; the same reactions also allow an atom economy of {} instead of {}",
                                     percent(proof.best_atom_economy, 1), percent(proof.atom_economy, 1))));
    return text;
}

writing::KeyValueList graph_findings(const RouteView& route) {
    writing::KeyValueList list;
    const auto say = [&](const char* key, const std::string& value) {
        if (!value.empty()) list.entries.push_back({key, value});
    };
    for (std::size_t s = 0; s < route.route().steps.size(); ++s)
        list.entries.push_back(
            {route.route().steps.size() == 1 ? "overall" : "overall, " + route.route().steps[s].id,
             overall_text(route, s)});
    // Who is bought, transient or by-product is told by picture and table; these are not drawn.
    say("never used by a reaction", never_used(route));
    add_loops(route, list);
    std::vector<std::string> idle;
    for (std::size_t r = 0; r < route.graph.reactions.size(); ++r)
        if (!route.graph.reactions[r].reached) idle.push_back(label_of(r));
    say("never starts", listed(idle));
    return list;
}

} // namespace

void add_reactions(const ReportView& view, Blocks& blocks) {
    blocks.push_back(writing::Paragraph{
        "Boxes are substances, squares are reactions; an arrow into a square is what the reaction uses, one "
        "out of it what "
        "it makes. Transients, outlined in dashes, appear in the flask although nobody charges them. What is "
        "bought, "
        "transient or left over follows from the reactions, not from a list in the route file."});
    for (const RouteView& route : view.routes) {
        blocks.push_back(writing::Heading{3, route.id + ": " + route.route().title, "graph-" + route.id});
        writing::Graph graph = graph_of(route);
        std::string size = fmt::format("{} and {}.", counted(graph.squares.size(), "reaction", "reactions"),
                                       counted(graph.boxes.size(), "substance", "substances"));
        blocks.push_back(writing::Figure{"Reactions of " + route.id + ".", capitalised(std::move(size)),
                                         std::move(graph)});
        blocks.push_back(graph_findings(route));
    }
    blocks.push_back(not_predicted());
}

} // namespace routeweigh::documents
