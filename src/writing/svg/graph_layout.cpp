// SPDX-License-Identifier: MIT
#include "writing/svg/graph_layout.hpp"

#include "writing/svg/graph_layers.hpp"

#include <algorithm>

namespace routeweigh::writing {
namespace {

constexpr double node_gap = 16;
constexpr double layer_gap = 34;

/// The positions nearest to the wanted ones that keep the order and the distances: pooling of adjacent
/// violators.
void settle(Layered& graph, const std::vector<std::size_t>& layer, const std::vector<double>& wanted) {
    struct Pool {
        double sum = 0;
        double count = 0;
        double mean() const { return sum / count; }
    };
    std::vector<double> offset(layer.size(), 0.0);
    for (std::size_t i = 1; i < layer.size(); ++i) {
        offset[i] =
            offset[i - 1] + (graph.nodes[layer[i - 1]].width + graph.nodes[layer[i]].width) / 2 + node_gap;
    }
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < layer.size(); ++i) {
        pools.push_back({wanted[i] - offset[i], 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            pools[pools.size() - 2].sum += pools.back().sum;
            pools[pools.size() - 2].count += pools.back().count;
            pools.pop_back();
        }
    }
    std::size_t i = 0;
    for (const Pool& pool : pools) {
        for (double member = 0; member < pool.count; ++member, ++i)
            graph.nodes[layer[i]].x = pool.mean() + offset[i];
    }
}

void place_across(Layered& graph) {
    for (const auto& layer : graph.layers)
        settle(graph, layer, std::vector<double>(layer.size(), 0.0));
    for (int sweep = 0; sweep < 16; ++sweep) {
        for (std::size_t step = 0; step < graph.layers.size(); ++step) {
            const auto& layer = graph.layers[sweep % 2 == 0 ? step : graph.layers.size() - 1 - step];
            std::vector<double> wanted;
            for (const std::size_t node : layer) {
                double sum = 0;
                double count = 0;
                for (const auto* near : {&graph.above, &graph.below}) {
                    for (const std::size_t other : (*near)[node]) {
                        sum += graph.nodes[other].x;
                        ++count;
                    }
                }
                wanted.push_back(count > 0 ? sum / count : graph.nodes[node].x);
            }
            settle(graph, layer, wanted);
        }
    }
}

/// The other end of a link, and the arrow that it belongs to.
struct End {
    std::size_t other = 0;
    std::size_t arrow = 0;
};

/// Where an arrow touches a node: the arrows spread over its middle, in the order of their other ends.
double port(const Layered& graph, const std::vector<End>& ends, std::size_t node, std::size_t arrow) {
    std::vector<End> sorted = ends;
    std::stable_sort(sorted.begin(), sorted.end(), [&](const End& a, const End& b) {
        return graph.nodes[a.other].x < graph.nodes[b.other].x;
    });
    const auto found =
        std::find_if(sorted.begin(), sorted.end(), [&](const End& end) { return end.arrow == arrow; });
    const auto at = static_cast<double>(found - sorted.begin());
    const auto count = static_cast<double>(sorted.size());
    const double room = std::min(graph.nodes[node].width * 0.7, count * 16);
    return graph.nodes[node].x + ((at + 0.5) / count - 0.5) * room;
}

} // namespace

GraphLayout layout_graph(const Graph& chart, double width) {
    Layered graph = layered(chart);
    place_across(graph);

    GraphLayout layout;
    double leftmost = 0;
    double rightmost = 0;
    for (const Node& node : graph.nodes) {
        leftmost = std::min(leftmost, node.x - node.width / 2);
        rightmost = std::max(rightmost, node.x + node.width / 2);
    }
    layout.width = std::max(width, rightmost - leftmost + 8);
    const double shift = (layout.width - (leftmost + rightmost)) / 2;
    for (Node& node : graph.nodes)
        node.x += shift;

    std::vector<double> middle(graph.layers.size());
    double y = 4;
    for (std::size_t layer = 0; layer < graph.layers.size(); ++layer) {
        double height = 0;
        for (const std::size_t node : graph.layers[layer])
            height = std::max(height, graph.nodes[node].height);
        middle[layer] = y + height / 2;
        y += height + layer_gap;
    }
    layout.height = y - layer_gap + 4;
    const auto placed = [&](std::size_t node) {
        return PlacedNode{graph.nodes[node].x, middle[graph.nodes[node].layer], graph.nodes[node].width,
                          graph.nodes[node].height, graph.nodes[node].label};
    };
    for (std::size_t i = 0; i < chart.boxes.size(); ++i)
        layout.boxes.push_back(placed(i));
    for (std::size_t i = 0; i < chart.squares.size(); ++i)
        layout.squares.push_back(placed(chart.boxes.size() + i));
    std::vector<std::vector<End>> ends_above(graph.nodes.size());
    std::vector<std::vector<End>> ends_below(graph.nodes.size());
    for (std::size_t i = 0; i < graph.chains.size(); ++i) {
        const auto& chain = graph.chains[i];
        for (std::size_t k = 0; k + 1 < chain.size(); ++k) {
            ends_below[chain[k]].push_back({chain[k + 1], i});
            ends_above[chain[k + 1]].push_back({chain[k], i});
        }
    }
    for (std::size_t i = 0; i < graph.chains.size(); ++i) {
        const auto& chain = graph.chains[i];
        PlacedArrow& arrow = layout.arrows.emplace_back();
        arrow.upwards = graph.upwards[i];
        for (std::size_t k = 0; k < chain.size(); ++k) {
            const Node& node = graph.nodes[chain[k]];
            const double center = middle[node.layer];
            if (k == 0) {
                arrow.points.push_back(
                    {port(graph, ends_below[chain[k]], chain[k], i), center + node.height / 2});
            } else if (k + 1 == chain.size()) {
                arrow.points.push_back(
                    {port(graph, ends_above[chain[k]], chain[k], i), center - node.height / 2});
            } else {
                arrow.points.push_back({node.x, center});
            }
        }
        const bool starts_at_box = i < chart.arrows.size() && chart.arrows[i].into_square;
        const bool box_is_upper = !chain.empty() && chain.front() < chart.boxes.size();
        if (starts_at_box != box_is_upper) std::reverse(arrow.points.begin(), arrow.points.end());
    }
    return layout;
}

} // namespace routeweigh::writing
