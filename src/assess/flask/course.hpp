// SPDX-License-Identifier: MIT
// The course of a substance in the flask over time, and its peak: an estimate from what the route file says
// of addition and rates.
//
// Use is taken as first order in the substance, at the share of its partner that is left when a portion goes
// in, as if all that went in before had reacted. So it slows down as the partner runs out, and what goes in
// beyond it stays. Where use is slow this takes the partner for rarer than it is, and the estimate is high.
#pragma once

#include "route/flat_route.hpp"

#include <vector>

namespace routeweigh {

struct CourseCurve {
    struct Point {
        double seconds = 0, moles = 0;
    };
    const RateConstant* used = nullptr; ///< of the route
    std::vector<Point> points;
    Point peak;
};

/// In mol for one pot of the step. The route must outlive it.
struct FlaskCourse {
    int step = 0, stage = 0;
    const Kinetics* kinetics = nullptr;
    double fed = 0;                  ///< charged or made in the stage, all together
    double partner = 0;              ///< of the substance that `with` can use up
    double ceiling = 0;              ///< the most by stoichiometry; no curve is drawn above it
    double until = 0;                ///< s, end of the stage, or longer where the addition takes longer
    std::vector<CourseCurve> curves; ///< one for each constant of its use

    double left() const { return fed > partner ? fed - partner : 0; } ///< when all that can react has
};

/// Of every stage with kinetics, at the amounts as written.
std::vector<FlaskCourse> flask_courses(const FlatRoute& flat, const Evaluation& evaluation);

} // namespace routeweigh
