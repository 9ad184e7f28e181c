// SPDX-License-Identifier: MIT
#include "route/reaction_graph.hpp"

#include "base/index.hpp"
#include "route/route.hpp"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/strong_components.hpp>

#include <array>
#include <cstddef>
#include <map>
#include <queue>
#include <set>

namespace routeweigh {
namespace {

using Digraph = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS>;

/// Component of every vertex; a component's number is above those of all components it leads to.
std::vector<int> strong_component_numbers(const Digraph& graph, int& count) {
    std::vector<int> number(boost::num_vertices(graph));
    count = boost::strong_components(
        graph, boost::make_iterator_property_map(number.begin(), boost::get(boost::vertex_index, graph)));
    return number;
}

class GraphBuilder {
  public:
    explicit GraphBuilder(const Route& route) : route_(route) {
        for (const ChargeSupply& supply : find_supplies(route)) {
            fed_charges_.insert({supply.step, supply.stage, supply.charge});
            makers_[{supply.step, route.steps[at(supply.fed_by)].product}] = supply.fed_by;
        }
        for (std::size_t s = 0; s < route.steps.size(); ++s)
            add_step(static_cast<int>(s));
        assign_roles();
        mark_reached();
        mark_loops();
    }
    ReactionGraph take() { return std::move(graph_); }

  private:
    struct Supply {
        bool charged = false, fed = false, made_here = false, used = false;
    };

    /// An intermediate belongs to the step that makes it; everything else to the step it occurs in.
    int vertex(int step, const Substance* substance) {
        if (const auto maker = makers_.find({step, substance}); maker != makers_.end()) step = maker->second;
        const auto [found, fresh] =
            vertices_.try_emplace({step, substance}, static_cast<int>(graph_.substances.size()));
        if (fresh) {
            graph_.substances.push_back({substance, step, GraphRole::auxiliary, false, false, -1});
            state_.emplace_back();
        }
        return found->second;
    }

    void add_step(int s) {
        const Step& step = route_.steps[at(s)];
        for (std::size_t g = 0; g < step.stages.size(); ++g) {
            const Stage& stage = step.stages[g];
            for (std::size_t c = 0; c < stage.charges.size(); ++c) {
                const bool fed = fed_charges_.contains({s, static_cast<int>(g), static_cast<int>(c)});
                for (const Component& component : stage.charges[c].material->components) {
                    Supply& state = state_[at(vertex(s, component.substance))];
                    (fed ? state.fed : state.charged) = true;
                }
            }
            for (std::size_t r = 0; r < stage.reactions.size(); ++r) {
                const int reaction = static_cast<int>(graph_.reactions.size());
                graph_.reactions.push_back({s, static_cast<int>(g), static_cast<int>(r), false, -1});
                for (const auto& part : stage.reactions[r].equation.parts) {
                    const int substance = vertex(s, part.substance);
                    graph_.edges.push_back({substance, reaction, part.coefficient});
                    (part.coefficient < 0 ? state_[at(substance)].used : state_[at(substance)].made_here) =
                        true;
                }
            }
        }
        vertex(s, step.product);
    }

    void assign_roles() {
        for (std::size_t v = 0; v < graph_.substances.size(); ++v) {
            GraphSubstance& entry = graph_.substances[v];
            const Supply& state = state_[v];
            const bool isolated = route_.steps[at(entry.step)].product == entry.substance;
            entry.regenerated = state.charged && state.made_here;
            if (isolated && entry.substance == route_.product)
                entry.role = GraphRole::product;
            else if (isolated && (state.fed || !state.charged))
                entry.role = GraphRole::intermediate;
            else if (state.charged)
                entry.role = state.used ? GraphRole::bought : GraphRole::auxiliary;
            else if (!state.made_here)
                entry.role = GraphRole::missing;
            else
                entry.role = state.used ? GraphRole::transient : GraphRole::by_product;
        }
    }

    /// Forward chaining: a reaction fires once all it uses is there.
    void mark_reached() {
        std::vector<int> waiting(graph_.reactions.size(), 0);
        std::vector<std::vector<int>> users(graph_.substances.size()), makes(graph_.reactions.size());
        for (const GraphEdge& edge : graph_.edges) {
            if (edge.coefficient < 0) {
                ++waiting[at(edge.reaction)];
                users[at(edge.substance)].push_back(edge.reaction);
            } else {
                makes[at(edge.reaction)].push_back(edge.substance);
            }
        }
        std::queue<int> fresh;
        const auto reach = [&](int substance) {
            if (graph_.substances[at(substance)].reached) return;
            graph_.substances[at(substance)].reached = true;
            fresh.push(substance);
        };
        for (std::size_t v = 0; v < graph_.substances.size(); ++v)
            if (state_[v].charged) reach(static_cast<int>(v));
        for (; !fresh.empty(); fresh.pop())
            for (const int reaction : users[at(fresh.front())])
                if (--waiting[at(reaction)] == 0) {
                    graph_.reactions[at(reaction)].reached = true;
                    for (const int substance : makes[at(reaction)])
                        reach(substance);
                }
    }

    void mark_loops() {
        const auto substances = graph_.substances.size();
        Digraph digraph(substances + graph_.reactions.size());
        for (const GraphEdge& edge : graph_.edges) {
            const auto substance = at(edge.substance), reaction = substances + at(edge.reaction);
            if (edge.coefficient < 0)
                boost::add_edge(substance, reaction, digraph);
            else
                boost::add_edge(reaction, substance, digraph);
        }
        int count = 0;
        const std::vector<int> number = strong_component_numbers(digraph, count);
        std::vector<int> size(at(count), 0), loop(at(count), -1);
        for (const int component : number)
            ++size[at(component)];
        for (std::size_t component = 0; component < size.size(); ++component)
            if (size[component] > 1) loop[component] = graph_.loop_count++;
        for (std::size_t v = 0; v < substances; ++v)
            graph_.substances[v].loop = loop[at(number[v])];
        for (std::size_t r = 0; r < graph_.reactions.size(); ++r)
            graph_.reactions[r].loop = loop[at(number[substances + r])];
    }

    const Route& route_;
    std::set<std::array<int, 3>> fed_charges_; ///< step, stage, charge
    std::map<std::pair<int, const Substance*>, int> makers_, vertices_;
    std::vector<Supply> state_;
    ReactionGraph graph_;
};

} // namespace

std::string_view words(GraphRole role) {
    switch (role) {
    case GraphRole::product:
        return "product";
    case GraphRole::intermediate:
        return "intermediate";
    case GraphRole::bought:
        return "bought";
    case GraphRole::auxiliary:
        return "never used by a reaction";
    case GraphRole::transient:
        return "transient";
    case GraphRole::by_product:
        return "by-product";
    case GraphRole::missing:
        return "not supplied";
    }
    return "";
}

ReactionGraph build_reaction_graph(const Route& route) {
    return GraphBuilder(route).take();
}

std::vector<ChargeSupply> find_supplies(const Route& route) {
    std::map<const Substance*, int> makers;
    for (std::size_t s = 0; s < route.steps.size(); ++s)
        if (route.steps[s].product != nullptr) makers.emplace(route.steps[s].product, static_cast<int>(s));
    std::vector<ChargeSupply> supplies;
    for (std::size_t s = 0; s < route.steps.size(); ++s)
        for (std::size_t g = 0; g < route.steps[s].stages.size(); ++g) {
            const std::vector<Charge>& charges = route.steps[s].stages[g].charges;
            for (std::size_t c = 0; c < charges.size(); ++c) {
                if (charges[c].bought || charges[c].material == nullptr ||
                    charges[c].material->components.size() != 1)
                    continue;
                const auto maker = makers.find(charges[c].material->components.front().substance);
                if (maker != makers.end())
                    supplies.push_back(
                        {static_cast<int>(s), static_cast<int>(g), static_cast<int>(c), maker->second});
            }
        }
    return supplies;
}

std::vector<std::vector<int>> components_last_first(int vertex_count,
                                                    std::span<const std::pair<int, int>> edges) {
    Digraph digraph(at(vertex_count));
    for (const auto& [from, to] : edges)
        boost::add_edge(at(from), at(to), digraph);
    int count = 0;
    const std::vector<int> number = strong_component_numbers(digraph, count);
    std::vector<std::vector<int>> groups(at(count));
    for (int vertex = 0; vertex < vertex_count; ++vertex)
        groups[at(number[at(vertex)])].push_back(vertex);
    return groups;
}

} // namespace routeweigh
