// SPDX-License-Identifier: MIT
// A changed route, evaluated. Cheaper than an Assessment: no second banding, no ledger.
#pragma once

#include "assess/assessment.hpp"
#include "base/assignment.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace routeweigh {

/// Stays where it was made, for its parts point at each other.
class Trial {
  public:
    Trial(Route changed, const AssessmentRules& rules) : route_(std::move(changed)), figures_(route_, rules) {
        figures_.evaluate(figures_.flat().nominal(), values_);
    }
    Trial(const Trial&) = delete;
    Trial& operator=(const Trial&) = delete;

    const Route& route() const { return route_; }
    const RouteFigures& figures() const { return figures_; }
    const RouteFigures::Values& values() const { return values_; }

  private:
    Route route_;
    RouteFigures figures_;
    RouteFigures::Values values_;
};

/// What came of a change: the route with it, or why there is none.
struct Outcome {
    std::unique_ptr<Trial> trial;
    std::string refused; ///< first problem of the changed route, in words
};

/// Puts values into the file of a route and reads it again; the front end has the readers.
using Apply = std::function<Outcome(const std::vector<Assignment>&)>;

} // namespace routeweigh
