// SPDX-License-Identifier: MIT
// A course file: which experiments, how many sections and students, whose prices and rules.
//
// {"id": "...", "title": "...", "college": "...", "term": "...", "sections": 2, "students": 12, "extra": "10
// %",
//  "session": "180 min", "jurisdiction": "EU", "prices": "prices.json",
//  "experiments": [{"week": 3, "route": "../routes/x.json", "techniques": ["melting range"]}]}
#pragma once

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

/// The text of a file that another one names. \throws whatever the front end throws for what cannot be read
using LoadFile = std::function<SourcePtr(const std::string& path)>;

/// A course with everything that was read for it. Stays where it was made, for its parts point at each other.
class Course {
  public:
    /// \param replace  "5=other.json": the experiment of week 5 gives way to this route; "" where none does
    /// \throws InputError with every problem of the course file and of its routes, CallError for a faulty
    /// `replace`
    Course(const SourcePtr& source, const LoadFile& load, const Catalogue& catalogue,
           const AssessmentRules& rules, const std::string& replace, Problems& problems);
    Course(const Course&) = delete;
    Course& operator=(const Course&) = delete;

    const course::CourseUse& use() const { return use_; }
    const course::House& house() const { return records_->house(); }
    std::optional<int> replaced_week() const { return replaced_week_; }
    const std::string& jurisdiction_name() const { return jurisdiction_; } ///< "EU" or "US"

  private:
    std::string jurisdiction_ = "EU";
    std::optional<int> replaced_week_;
    std::vector<std::unique_ptr<Assessment>> routes_;
    std::unique_ptr<HouseRecords> records_;
    course::CourseUse use_;
};

/// \pre `after` is the same course opened with a route in the place of another. Both must outlive the result.
Proposal proposal_of(const Course& before, const Course& after);

} // namespace routeweigh
