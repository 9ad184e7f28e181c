// SPDX-License-Identifier: MIT
// A term of experiments: what all of them together take and leave, and which techniques they practise.
#pragma once

#include "assess/course/class_use.hpp"

#include <string>
#include <vector>

namespace routeweigh::course {

struct Experiment {
    int week = 0;                        ///< from 1; 0 where the experiment stands alone
    std::string source;                  ///< name of the route file
    std::vector<std::string> techniques; ///< of the route and of the course file
    ClassUse use;
};

struct ContainerTotal {
    std::string name;
    double volume = 0; ///< mL of the term, allowance included
    double usable = 0; ///< mL of one container at the fill limit
    int containers = 0;
};

struct CourseUse {
    std::string id, title, college, term;
    std::vector<Experiment> experiments; ///< in order of the weeks

    /// Of every experiment. \pre there is one
    const stock::ClassPlan& plan() const { return experiments.front().use.plan; }
    /// In the order of the local rules, then what needs bottles of its own.
    std::vector<ContainerTotal> containers() const;
    /// Every technique with the weeks in which it is practised, in order of first use.
    std::vector<std::pair<std::string, std::vector<int>>> techniques() const;
    /// The sum of one number over the experiments.
    double total(double (*of)(const ClassUse&)) const;
    /// Money of the packs when each material is bought once for all weeks, so that what a week leaves in a
    /// pack serves the next. \param instead  of what the experiment of `week` takes; nullptr: as it is
    double cost_of_packs(const stock::PriceList& prices, int week = 0,
                         const ClassUse* instead = nullptr) const;
};

} // namespace routeweigh::course
