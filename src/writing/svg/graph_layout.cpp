// SPDX-License-Identifier: MIT
#include "writing/svg/graph_layout.hpp"

#include "writing/svg/canvas.hpp"
#include "writing/svg/draw.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <utility>

namespace routeweigh::writing {
namespace {

constexpr double box_text = 11.5;
constexpr double longest_line = 118;
constexpr double line_height = 13.5;
constexpr double node_gap = 16;
constexpr double layer_gap = 34;
constexpr double pass_width = 12; ///< room for an arrow that crosses a layer

bool valid(const Graph& chart, const Graph::Arrow& arrow) {
    return arrow.box >= 0 && static_cast<std::size_t>(arrow.box) < chart.boxes.size() && arrow.square >= 0 &&
           static_cast<std::size_t>(arrow.square) < chart.squares.size();
}

/// A node of the layered picture: a box, a square, or the place where a long arrow crosses a layer.
struct Node {
    std::size_t layer = 0;
    double width = pass_width;
    double height = 0;
    double x = 0;
    std::vector<std::string> label;
};

struct Link {
    std::size_t upper = 0;
    std::size_t lower = 0;
};

/// All nodes with links between neighbouring layers only; `chains` are the nodes of each arrow from top to
/// bottom.
struct Layered {
    std::vector<Node> nodes;
    std::vector<Link> links;
    std::vector<std::vector<std::size_t>> chains;
    std::vector<bool> upwards;
    std::vector<std::vector<std::size_t>> layers;
};

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

Layered layered(const Graph& chart) {
    Layered graph;
    for (const auto& box : chart.boxes) {
        Node& node = graph.nodes.emplace_back();
        const bool bold = box.style == Graph::Style::goal;
        node.label = wrap_measured(box.label, longest_line, box_text, bold);
        node.width = 30;
        for (const auto& line : node.label)
            node.width = std::max(node.width, text_width(line, box_text, bold) + 18);
        node.height = line_height * static_cast<double>(node.label.size()) + 10;
    }
    for (const auto& square : chart.squares) {
        Node& node = graph.nodes.emplace_back();
        node.label = {square.label};
        node.width = std::max(22.0, text_width(square.label, 10.5, true) + 8);
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
    for (std::size_t i = 0; i < graph.nodes.size(); ++i) {
        if (graph.layers.size() <= graph.nodes[i].layer) graph.layers.resize(graph.nodes[i].layer + 1);
        graph.layers[graph.nodes[i].layer].push_back(i);
    }
    return graph;
}

using Neighbours = std::vector<std::vector<std::size_t>>;

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
void reduce_crossings(Layered& graph, const Neighbours& above, const Neighbours& below) {
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
        const Neighbours& near = down ? above : below;
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

void place_across(Layered& graph, const Neighbours& above, const Neighbours& below) {
    for (const auto& layer : graph.layers)
        settle(graph, layer, std::vector<double>(layer.size(), 0.0));
    for (int sweep = 0; sweep < 16; ++sweep) {
        for (std::size_t step = 0; step < graph.layers.size(); ++step) {
            const auto& layer = graph.layers[sweep % 2 == 0 ? step : graph.layers.size() - 1 - step];
            std::vector<double> wanted;
            for (const std::size_t node : layer) {
                double sum = 0;
                double count = 0;
                for (const Neighbours* near : {&above, &below}) {
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

GraphLayout layout_graph(const Graph& chart) {
    Layered graph = layered(chart);
    Neighbours above(graph.nodes.size());
    Neighbours below(graph.nodes.size());
    for (const Link& link : graph.links) {
        below[link.upper].push_back(link.lower);
        above[link.lower].push_back(link.upper);
    }
    reduce_crossings(graph, above, below);
    place_across(graph, above, below);

    GraphLayout layout;
    double leftmost = 0;
    double rightmost = 0;
    for (const Node& node : graph.nodes) {
        leftmost = std::min(leftmost, node.x - node.width / 2);
        rightmost = std::max(rightmost, node.x + node.width / 2);
    }
    layout.width = std::max(picture_width, rightmost - leftmost + 8);
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
