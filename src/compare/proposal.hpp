// SPDX-License-Identifier: MIT
// One experiment of a course put in the place of another: both as their files have them, and the new one once
// more with every isolated yield so far off as hands and batches can put it.
#pragma once

#include "assess/course/course_use.hpp"

#include <memory>
#include <vector>

namespace routeweigh {

/// A route with other isolated yields, and what it takes of the class.
struct OtherYields {
    std::unique_ptr<Assessment> route;
    course::ClassUse use;
};

/// Every isolated yield moved by so many points of the theoretical yield, within 1 and 100 %; what is charged
/// stays. \param points  fraction of 1
OtherYields with_yields_moved(const course::ClassUse& use, double points, const course::House& house);

/// Stays valid as long as both courses and the house do.
struct Proposal {
    const course::CourseUse* before = nullptr;
    const course::CourseUse* after = nullptr; ///< the same with another route in one week
    const course::Experiment* now = nullptr;
    const course::Experiment* proposed = nullptr;
    std::vector<OtherYields> proposed_otherwise; ///< at plausible_yield_difference less and more

    bool same_product() const {
        return now->use.route->route().product == proposed->use.route->route().product;
    }
};

/// \pre both courses have an experiment in that week
Proposal make_proposal(const course::CourseUse& before, const course::CourseUse& after, int week,
                       const course::House& house);

} // namespace routeweigh
