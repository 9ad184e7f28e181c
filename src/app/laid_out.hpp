// SPDX-License-Identifier: MIT
// What a front end asks for the papers of the bench: one route laid out, with the rules of a jurisdiction.
#pragma once

#include "app/session.hpp"
#include "assess/bench/experiment.hpp"

namespace routeweigh {

/// A route with all that the papers of the bench read. Stays where it was made.
class LaidOutRoute {
  public:
    /// \param jurisdiction  whose rules are shipped: "US" or "EU"; case does not matter
    /// The catalogue and the rules must outlive it.
    /// \throws CallError for another jurisdiction, InputError where a table is faulty
    LaidOutRoute(Route route, const AssessmentRules& rules, const Catalogue& catalogue,
                 const std::string& jurisdiction);

    const bench::Experiment& experiment() const { return experiment_; }

  private:
    Assessment assessment_;
    bench::BenchRules bench_rules_;
    bench::Experiment experiment_;
};

/// The only route of the sources. \throws CallError where there are several, as read_routes() else
Route read_one_route(const std::vector<SourcePtr>& sources, const Catalogue& catalogue, Problems& problems);

} // namespace routeweigh
