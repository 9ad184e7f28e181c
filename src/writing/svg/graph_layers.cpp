// SPDX-License-Identifier: MIT
#include "writing/svg/graph_layers.hpp"

#include "writing/svg/canvas.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <utility>

namespace routeweigh::writing {
namespace {

constexpr double box_text = 11.5;
constexpr double longest_line = 118;
constexpr double box_line_height = 13.5;

bool valid(const Graph& chart, const Graph::Arrow& arrow) {
    return arrow.box >= 0 && static_cast<std::size_t>(arrow.box) < chart.boxes.size() && arrow.square >= 0 &&
           static_cast<std::size_t>(arrow.square) < chart.squares.size();
}

/// Which arrows run upwards: those into a box that a square not later than theirs has used.
std::vector<bool> upward_arrows(const Graph& chart) {
    const std::vector<std::size_t> order = running_order(chart);
    std::vector<std::size_t> rank(chart.squares.size());
    for (std::size_t i = 0; i < order.size(); ++i)
        rank[order[i]] = i;
    constexpr auto never = std::numeric_limits<std::size_t>::max();
    std::vector<std::size_t> first_use(chart.boxes.size(), never);
    for (const auto& arrow : chart.arrows) {
        if (!valid(chart, arrow) || !arrow.into_square) continue;
        std::size_t& use = first_use[static_cast<std::size_t>(arrow.box)];
        use = std::min(use, rank[static_cast<std::size_t>(arrow.square)]);
    }
    std::vector<bool> upwards;
    for (const auto& arrow : chart.arrows) {
        upwards.push_back(valid(chart, arrow) && !arrow.into_square &&
                          rank[static_cast<std::size_t>(arrow.square)] >=
                              first_use[static_cast<std::size_t>(arrow.box)]);
    }
    return upwards;
}

/// Layers by longest path: boxes on even layers, squares on odd ones. What comes from outside moves down to
/// just above its first use.
void assign_layers(const Graph& chart, const std::vector<bool>& upwards, std::vector<Node>& nodes) {
    const std::size_t boxes = chart.boxes.size();
    const auto relax = [&](bool& changed, std::size_t from, std::size_t to) {
        if (nodes[to].layer >= nodes[from].layer + 1) return;
        nodes[to].layer = nodes[from].layer + 1;
        changed = true;
    };
    for (std::size_t i = 0; i < chart.squares.size(); ++i)
        nodes[boxes + i].layer = 1;
    // The arrows that do not run upwards have no cycle, so this ends within as many rounds as there are
    // nodes.
    bool changed = true;
    for (std::size_t round = 0; changed && round <= nodes.size(); ++round) {
        changed = false;
        for (std::size_t i = 0; i < chart.arrows.size(); ++i) {
            const auto& arrow = chart.arrows[i];
            if (!valid(chart, arrow) || upwards[i]) continue;
            const auto box = static_cast<std::size_t>(arrow.box);
            const auto square = boxes + static_cast<std::size_t>(arrow.square);
            arrow.into_square ? relax(changed, box, square) : relax(changed, square, box);
        }
    }
    std::vector<bool> made(boxes, false);
    std::vector<std::size_t> use(boxes, std::numeric_limits<std::size_t>::max());
    for (std::size_t i = 0; i < chart.arrows.size(); ++i) {
        const auto& arrow = chart.arrows[i];
        if (!valid(chart, arrow)) continue;
        const auto box = static_cast<std::size_t>(arrow.box);
        if (!arrow.into_square && !upwards[i]) made[box] = true;
        if (arrow.into_square) {
            use[box] = std::min(use[box], nodes[boxes + static_cast<std::size_t>(arrow.square)].layer);
        }
    }
    for (std::size_t box = 0; box < boxes; ++box) {
        if (!made[box] && use[box] != std::numeric_limits<std::size_t>::max())
            nodes[box].layer = use[box] - 1;
    }
}

/// Labels are broken at spaces; a long word gets a wider box rather than be cut, up to twice the usual width.
double line_width(const std::string& label, bool bold) {
    double longest = longest_line;
    for (std::size_t at = 0; at < label.size();) {
        const std::size_t end = std::min(label.find(' ', at), label.size());
        longest = std::max(longest, text_width(label.substr(at, end - at), box_text, bold));
        at = end + 1;
    }
    return std::min(longest, 2 * longest_line);
}

Layered build(const Graph& chart) {
    Layered graph;
    for (const auto& box : chart.boxes) {
        Node& node = graph.nodes.emplace_back();
        const bool bold = box.style == Graph::Style::goal;
        node.label = wrap_measured(box.label, line_width(box.label, bold), box_text, bold);
        node.width = 30;
        for (const auto& line : node.label)
            node.width = std::max(node.width, text_width(line, box_text, bold) + 18);
        node.height = box_line_height * static_cast<double>(node.label.size()) + 10;
    }
    std::vector<int> entering(chart.squares.size(), 0);
    std::vector<int> leaving(chart.squares.size(), 0);
    for (const auto& arrow : chart.arrows) {
        if (valid(chart, arrow))
            ++(arrow.into_square ? entering : leaving)[static_cast<std::size_t>(arrow.square)];
    }
    for (std::size_t i = 0; i < chart.squares.size(); ++i) {
        Node& node = graph.nodes.emplace_back();
        node.label = {chart.squares[i].label};
        // Many arrows need a broader side to arrive at.
        const double arrows = 13.0 * std::max(entering[i], leaving[i]);
        node.width = std::max({22.0, arrows, text_width(chart.squares[i].label, 10.5, true) + 8});
        node.height = 22;
    }
    graph.upwards = upward_arrows(chart);
    assign_layers(chart, graph.upwards, graph.nodes);
    for (const auto& arrow : chart.arrows) {
        auto& chain = graph.chains.emplace_back();
        if (!valid(chart, arrow)) continue;
        std::size_t upper = static_cast<std::size_t>(arrow.box);
        std::size_t lower = chart.boxes.size() + static_cast<std::size_t>(arrow.square);
        if (graph.nodes[upper].layer > graph.nodes[lower].layer) std::swap(upper, lower);
        chain.push_back(upper);
        for (std::size_t layer = graph.nodes[upper].layer + 1; layer < graph.nodes[lower].layer; ++layer) {
            Node pass;
            pass.layer = layer;
            chain.push_back(graph.nodes.size());
            graph.nodes.push_back(pass);
        }
        chain.push_back(lower);
        for (std::size_t i = 0; i + 1 < chain.size(); ++i)
            graph.links.push_back({chain[i], chain[i + 1]});
    }
    graph.above.resize(graph.nodes.size());
    graph.below.resize(graph.nodes.size());
    for (const Link& link : graph.links) {
        graph.below[link.upper].push_back(link.lower);
        graph.above[link.lower].push_back(link.upper);
    }
    for (std::size_t i = 0; i < graph.nodes.size(); ++i) {
        if (graph.layers.size() <= graph.nodes[i].layer) graph.layers.resize(graph.nodes[i].layer + 1);
        graph.layers[graph.nodes[i].layer].push_back(i);
    }
    return graph;
}

std::size_t crossings(const Layered& graph, const std::vector<std::size_t>& place) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < graph.links.size(); ++i) {
        for (std::size_t j = i + 1; j < graph.links.size(); ++j) {
            const Link& a = graph.links[i];
            const Link& b = graph.links[j];
            if (graph.nodes[a.upper].layer != graph.nodes[b.upper].layer) continue;
            const bool crossed = (place[a.upper] < place[b.upper] && place[a.lower] > place[b.lower]) ||
                                 (place[a.upper] > place[b.upper] && place[a.lower] < place[b.lower]);
            count += crossed ? 1 : 0;
        }
    }
    return count;
}

/// Sorts each layer by the mean place of the neighbours above, then below, and keeps the order with fewest
/// crossings.
void reduce_crossings(Layered& graph) {
    std::vector<std::size_t> place(graph.nodes.size());
    const auto number_layer = [&](const std::vector<std::size_t>& layer) {
        for (std::size_t i = 0; i < layer.size(); ++i)
            place[layer[i]] = i;
    };
    for (const auto& layer : graph.layers)
        number_layer(layer);
    auto best = graph.layers;
    // Counting compares all pairs of links; for a graph too large to be read anyway one pass must do.
    const bool large = graph.links.size() > 2000;
    std::size_t fewest = large ? 0 : crossings(graph, place);
    for (int sweep = 0; sweep < (large ? 1 : 12); ++sweep) {
        const bool down = sweep % 2 == 0;
        const auto& near = down ? graph.above : graph.below;
        for (std::size_t step = 0; step < graph.layers.size(); ++step) {
            auto& layer = graph.layers[down ? step : graph.layers.size() - 1 - step];
            std::map<std::size_t, double> mean;
            for (const std::size_t node : layer) {
                double sum = 0;
                for (const std::size_t other : near[node])
                    sum += static_cast<double>(place[other]);
                mean[node] = near[node].empty() ? static_cast<double>(place[node])
                                                : sum / static_cast<double>(near[node].size());
            }
            std::stable_sort(layer.begin(), layer.end(), [&](auto a, auto b) { return mean[a] < mean[b]; });
            number_layer(layer);
        }
        const std::size_t count = large ? 0 : crossings(graph, place);
        if (count < fewest || large) {
            fewest = count;
            best = graph.layers;
        }
    }
    graph.layers = best;
}

} // namespace

std::vector<std::size_t> running_order(const Graph& chart) {
    std::vector<bool> there(chart.boxes.size(), true);
    for (const auto& arrow : chart.arrows) {
        if (valid(chart, arrow) && !arrow.into_square) there[static_cast<std::size_t>(arrow.box)] = false;
    }
    for (std::size_t i = 0; i < chart.boxes.size(); ++i) {
        if (chart.boxes[i].style == Graph::Style::start) there[i] = true;
    }
    std::vector<std::vector<std::size_t>> takes(chart.squares.size());
    std::vector<std::vector<std::size_t>> gives(chart.squares.size());
    for (const auto& arrow : chart.arrows) {
        if (!valid(chart, arrow)) continue;
        auto& side = arrow.into_square ? takes : gives;
        side[static_cast<std::size_t>(arrow.square)].push_back(static_cast<std::size_t>(arrow.box));
    }
    std::vector<std::size_t> waiting(chart.squares.size());
    std::iota(waiting.begin(), waiting.end(), std::size_t{0});
    std::vector<std::size_t> order;
    while (!waiting.empty()) {
        const auto lacks = [&](std::size_t square) {
            return std::count_if(takes[square].begin(), takes[square].end(),
                                 [&](std::size_t box) { return !there[box]; });
        };
        const auto next = std::min_element(waiting.begin(), waiting.end(),
                                           [&](std::size_t a, std::size_t b) { return lacks(a) < lacks(b); });
        order.push_back(*next);
        for (const std::size_t box : gives[*next])
            there[box] = true;
        waiting.erase(next);
    }
    return order;
}

Layered layered(const Graph& chart) {
    Layered graph = build(chart);
    reduce_crossings(graph);
    return graph;
}

} // namespace routeweigh::writing
