// SPDX-License-Identifier: MIT
// A course file: which experiments, how many sections and students, whose prices and rules. A single
// experiment is a course too, made of a route and of what is said of the class.
//
// {"id": "...", "title": "...", "college": "...", "term": "...", "sections": 2, "students": 12, "extra": "10
// %",
//  "session": "180 min", "jurisdiction": "EU", "prices": "prices.json",
//  "experiments": [{"week": 3, "route": "../routes/x.json", "techniques": ["melting range"]}]}
#pragma once

#include "app/costs_session.hpp"
#include "app/house_records.hpp"
#include "app/session.hpp"
#include "assess/course/course_use.hpp"
#include "compare/proposal.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

/// A path is relative to the folder of the file that names it, or to where the call was made.
enum class NamedBy { file, call };

/// The text of a file. \throws InputError with one problem, the reason and a near name, where one that a file
/// names cannot be read; whatever the front end throws for one that the call names
using LoadFile = std::function<SourcePtr(const std::string& path, NamedBy named)>;

/// A course with everything that was read for it. Stays where it was made, for its parts point at each other.
class Course {
  public:
    /// \param replace  "5=other.json": the experiment of week 5 gives way to this route; "" where none does
    /// \throws InputError with every problem of the course file and of its routes, CallError for a faulty
    /// `replace`
    Course(const SourcePtr& source, const LoadFile& load, const Catalogue& catalogue,
           const AssessmentRules& rules, const std::string& replace, Problems& problems);
    /// The course of a single experiment, which has no week.
    /// \throws InputError where a table or the price list is faulty, CallError as class_plan()
    Course(Route route, const CostsRequest& request, const Catalogue& catalogue,
           const AssessmentRules& rules);
    Course(const Course&) = delete;
    Course& operator=(const Course&) = delete;

    const course::CourseUse& use() const { return use_; }
    const course::House& house() const { return records_->house(); }
    std::optional<int> replaced_week() const { return replaced_week_; }

  private:
    /// \param techniques  that the route does not show
    void add_experiment(int week, Route route, const std::vector<std::string>& techniques,
                        const stock::ClassPlan& plan, const AssessmentRules& rules);

    std::optional<int> replaced_week_;
    std::vector<std::unique_ptr<Assessment>> routes_;
    std::unique_ptr<HouseRecords> records_;
    course::CourseUse use_;
};

/// \pre `after` is the same course opened with a route in the place of another. Both must outlive the result.
Proposal proposal_of(const Course& before, const Course& after);

} // namespace routeweigh
