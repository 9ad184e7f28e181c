// SPDX-License-Identifier: MIT
// Every table that the papers of the bench read, read once.
#pragma once

#include "assess/bench/glassware.hpp"
#include "assess/bench/structures.hpp"
#include "assess/mixture/mixture_rules.hpp"
#include "assess/streams/stream_rules.hpp"

namespace routeweigh::bench {

/// Whose limits classify where these rules hold.
MixtureRegime regime_of(const streams::LocalRules& local);

/// Stays where it was made; the catalogue must outlive it.
struct BenchRules {
    /// \throws InputError with every problem of the first faulty table
    BenchRules(const Catalogue& catalogue, streams::LocalRules local);

    MixtureRules mixture;
    streams::StreamRules streams;
    Glassware glassware;
    Structures structures;
    double condenser_within; ///< K below a boiling point, as the estimate of utilities has it
};

} // namespace routeweigh::bench
