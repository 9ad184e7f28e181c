// SPDX-License-Identifier: MIT
// Sorts the nodes of a graph into layers and orders each layer so that few arrows cross.
#pragma once

#include "writing/chart.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace routeweigh::writing {

/// A node of the layered picture: a box, a square, or the place where a long arrow crosses a layer.
struct Node {
    std::size_t layer = 0;
    double width = 12; ///< what an arrow needs that crosses the layer
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
    std::vector<std::vector<std::size_t>> above; ///< for each node its neighbours in the layer above
    std::vector<std::vector<std::size_t>> below;
    std::vector<std::vector<std::size_t>> chains;
    std::vector<bool> upwards;
    std::vector<std::vector<std::size_t>> layers;
};

/// Boxes are the first nodes, squares the next, places of long arrows the last.
Layered layered(const Graph& chart);

/// The order in which the squares can run, each as soon as its boxes are there; what never can comes last.
std::vector<std::size_t> running_order(const Graph& chart);

} // namespace routeweigh::writing
