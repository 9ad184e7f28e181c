// SPDX-License-Identifier: MIT
// Places the boxes and squares of a graph in layers from top to bottom.
//
// Squares are put in an order in which each finds its boxes made; an arrow to a box that an earlier square
// already used runs upwards. Long arrows get a place in every layer they cross, so they pass between the
// boxes. Crossings are reduced by medians of neighbours; positions are the least-squares fit to the
// neighbours that keeps order and distances.
#pragma once

#include "writing/chart.hpp"

#include <string>
#include <vector>

namespace routeweigh::writing {

struct PlacedNode {
    double x = 0; ///< centre
    double y = 0;
    double width = 0;
    double height = 0;
    std::vector<std::string> label;
};

struct PlacedArrow {
    struct Point {
        double x = 0;
        double y = 0;
    };
    std::vector<Point> points; ///< from tail to head, one for each layer border crossed
    bool upwards = false;
};

struct GraphLayout {
    std::vector<PlacedNode> boxes;
    std::vector<PlacedNode> squares;
    std::vector<PlacedArrow> arrows; ///< in the order of the chart
    double width = 0;
    double height = 0;
};

/// `width` is the least width of the picture.
GraphLayout layout_graph(const Graph& chart, double width);

} // namespace routeweigh::writing
