// SPDX-License-Identifier: MIT
#include "compare/proposal.hpp"

#include "compare/comparison.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace routeweigh {
namespace {

const course::Experiment& in_week(const course::CourseUse& term, int week) {
    return *std::find_if(term.experiments.begin(), term.experiments.end(),
                         [week](const course::Experiment& experiment) { return experiment.week == week; });
}

} // namespace

OtherYields with_yields_moved(const course::ClassUse& use, double points, const course::House& house) {
    Route route = use.route->route();
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        const StepResult& result = use.route->evaluation().steps[s];
        if (!(result.theory > 0.0)) continue;
        Isolated& isolated = route.steps[s].isolated;
        isolated.mass.reset();
        isolated.yield = std::clamp(result.isolated / result.theory + points, 0.01, 1.0);
    }
    OtherYields other;
    other.route = std::make_unique<Assessment>(std::move(route), use.route->rules());
    other.use = course::use_of_class(*other.route, use.plan, house);
    return other;
}

Proposal make_proposal(const course::CourseUse& before, const course::CourseUse& after, int week,
                       const course::House& house) {
    Proposal proposal{&before, &after, &in_week(before, week), &in_week(after, week), {}};
    for (const double points : {-plausible_yield_difference, plausible_yield_difference})
        proposal.proposed_otherwise.push_back(with_yields_moved(proposal.proposed->use, points, house));
    return proposal;
}

} // namespace routeweigh
