// SPDX-License-Identifier: MIT
// The reaction graph of each route, and what the graph says of every substance.
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

std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

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
                  {Style::transient, "transient: made and used up, charged by nobody"},
                  {Style::side, "by-product"},
                  {Style::plain, "intermediate"},
                  {Style::goal, "product"}};
    std::erase_if(chart.keys, [&](const auto& key) {
        return std::none_of(chart.boxes.begin(), chart.boxes.end(),
                            [&](const auto& box) { return box.style == key.style; });
    });
    return chart;
}

/// Substances of one role, without repetition; a substance of two steps has a vertex in each.
std::string named(const RouteView& route, GraphRole role) {
    std::vector<std::string> names;
    for (const GraphSubstance& entry : route.graph.substances) {
        std::string name = entry.substance->name;
        if (entry.role != role) continue;
        if (entry.regenerated) name += " (made again by a reaction)";
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
    }
    return join(names, ", ");
}

/// "hydrogen bromide and bromine: what R1 uses R2 makes again".
std::string loop_text(const RouteView& route, int loop) {
    std::vector<std::string> substances, reactions;
    for (const GraphSubstance& entry : route.graph.substances)
        if (entry.loop == loop) substances.push_back(entry.substance->name);
    for (std::size_t r = 0; r < route.graph.reactions.size(); ++r)
        if (route.graph.reactions[r].loop == loop) reactions.push_back(label_of(r));
    return fmt::format(
        "{} go round in {}: what one of these reactions uses another makes again, so the same atoms serve "
        "more than once",
        listed(substances), listed(reactions));
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
                runs.push_back(fmt::format("{:.4g} \u00D7 {}", proof.combination[local], label_of(number)));
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

writing::KeyValueList findings(const RouteView& route) {
    writing::KeyValueList list;
    const auto say = [&](const char* key, const std::string& value) {
        if (!value.empty()) list.entries.push_back({key, value});
    };
    for (std::size_t s = 0; s < route.route().steps.size(); ++s)
        list.entries.push_back(
            {route.route().steps.size() == 1 ? "overall" : "overall, " + route.route().steps[s].id,
             overall_text(route, s)});
    say("bought", named(route, GraphRole::bought));
    say("intermediate", named(route, GraphRole::intermediate));
    say("transient", named(route, GraphRole::transient));
    say("by-product", named(route, GraphRole::by_product));
    say("never used by a reaction", named(route, GraphRole::auxiliary));
    for (int loop = 0; loop < route.graph.loop_count; ++loop)
        say("loop", loop_text(route, loop));
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
        const std::string transient = named(route, GraphRole::transient);
        blocks.push_back(writing::Figure{"Reactions of " + route.id + ".",
                                         transient.empty() ? "No substance is transient."
                                                           : "Transient: " + transient + ".",
                                         graph_of(route)});
        blocks.push_back(findings(route));
    }
    blocks.push_back(not_predicted());
}

} // namespace routeweigh::documents
