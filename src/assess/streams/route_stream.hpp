// SPDX-License-Identifier: MIT
// The streams of a route, each with its composition in both readings of the yield.
#pragma once

#include "assess/streams/composition.hpp"
#include "route/flat_route.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

/// Grams are for one run of the step as it is written: one pot.
struct RouteStream {
    int step = 0;
    std::string step_id, name;
    std::string title; ///< the name, after that of its step where the route has several
    StreamKind kind = StreamKind::liquid;
    Composition nominal;   ///< loss of yield read as lost product
    Composition unreacted; ///< loss of yield read as substrate that never reacted
    Composition recovered; ///< taken out of it and put to use again
    double solid_aid = 0;  ///< g of drying agent, adsorbent and supported catalyst in it
    double product = 0;    ///< g of solid product isolated beside it; 0 where the product is no solid
    double runs = 1;       ///< of the step for one run of the last step
    std::string handout;   ///< the container that the route file names; "" where none
    std::string handout_pointer;

    /// What stays in the pot with a solid product, so little that it stays on it.
    bool stays_on_product() const;
    bool is_gas() const { return kind == StreamKind::gas || kind == StreamKind::vapour; }
};

/// Streams in which nothing is left are left out, unless something was recovered from them.
std::vector<RouteStream> streams_of(const FlatRoute& flat, const Evaluation& evaluation);

} // namespace routeweigh::streams
