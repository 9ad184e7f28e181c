// SPDX-License-Identifier: MIT
// Every gram that enters and leaves a route, by substance and place: a labelled reading of one evaluation.
//
// In = product + recovered + streams, for the total mass and for every element.
#pragma once

#include "route/flat_route.hpp"

#include <string>
#include <vector>

namespace routeweigh {

struct LedgerRow {
    enum class Side { in, product, recovered, stream };
    Side side;
    int step;
    std::string place; ///< the material charged, or the stream
    const Substance* substance;
    double grams;        ///< for one run of the last step
    std::string pointer; ///< of the charge; empty for what leaves
};

struct ElementBalance {
    int element;            ///< atomic number
    double in = 0, out = 0; ///< g
};

struct Ledger {
    std::vector<LedgerRow> rows;
    double in = 0, product = 0, recovered = 0, streams = 0; ///< g
    std::vector<ElementBalance> elements;

    /// Largest relative difference between what enters and what leaves, over the total and every element.
    double closure_error() const;
};

/// \param unreacted  reads the loss of yield as substrate that never reacted
Ledger make_ledger(const FlatRoute& flat, const Evaluation& evaluation, bool unreacted = false);

} // namespace routeweigh
