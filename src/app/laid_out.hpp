// SPDX-License-Identifier: MIT
// What a front end asks for the papers of the bench: one route laid out, with the local rules.
#pragma once

#include "app/session.hpp"
#include "assess/bench/experiment.hpp"

#include <string>

namespace routeweigh {

/// A route with all that the papers of the bench read. Stays where it was made.
class LaidOutRoute {
  public:
    /// The catalogue and the rules must outlive it. \throws InputError where a table is faulty
    LaidOutRoute(Route route, const AssessmentRules& rules, const Catalogue& catalogue,
                 streams::LocalRules local);

    const bench::Experiment& experiment() const { return experiment_; }

  private:
    Assessment assessment_;
    bench::BenchRules bench_rules_;
    bench::Experiment experiment_;
};

/// The only route of the sources. \throws CallError where there are several, as read_routes() else
Route read_one_route(const std::vector<SourcePtr>& sources, const Catalogue& catalogue, Problems& problems);

} // namespace routeweigh
