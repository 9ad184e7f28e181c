// SPDX-License-Identifier: MIT
// What the bottles of a term can do, week by week, and what of it comes and goes with a change.
#pragma once

#include "assess/classified_route.hpp"
#include "assess/course/course_use.hpp"
#include "documents/bench_listing.hpp"
#include "writing/blocks.hpp"

#include <set>
#include <string>
#include <vector>

namespace routeweigh::documents {

/// What stands on the bench for the experiment of a week.
struct WeekHazards {
    int week = 0;
    std::string product;
    std::set<BenchHazard> kinds;
    Listing statements;            ///< with their bottles
    Listing told;                  ///< hazards_on_bench(): of this, something can come or go
    std::vector<std::string> open; ///< "bromine: not assessed", "ethanol: a test decides on ..."
};

/// One entry for each experiment, in their order.
std::vector<WeekHazards> hazards_of_term(const course::CourseUse& term, const ClassificationRules& rules);

writing::Table hazard_table(const std::vector<WeekHazards>& hazards);
writing::MachineObject hazards_tree(const WeekHazards& hazards);

/// Statements and bottles not assessed that a week, or the whole term, has only after the change or only
/// before it.
struct HazardChange {
    int week = 0; ///< 0: the term
    std::vector<std::string> comes, goes;
};

/// The weeks in which something comes or goes, then the term.
std::vector<HazardChange> hazard_changes(const std::vector<WeekHazards>& before,
                                         const std::vector<WeekHazards>& after);

writing::Table hazard_change_table(const std::vector<HazardChange>& changes);
writing::MachineList hazard_changes_tree(const std::vector<HazardChange>& changes);

} // namespace routeweigh::documents
