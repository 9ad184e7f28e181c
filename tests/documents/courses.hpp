// SPDX-License-Identifier: MIT
// Courses of shipped routes, read as the program reads them.
#pragma once

#include "app/course_session.hpp"

#include <memory>
#include <string>
#include <vector>

namespace routeweigh::test {

/// A course file of these routes of routes/, in weeks 1, 2, ...; 10 % extra, EU rules, example prices.
std::string course_text(const std::vector<std::string>& routes, int sections, int students,
                        const std::string& term = "autumn 2026");

/// \param replace  as Course takes it, of a route of routes/ or of `changed`
/// \param changed  text that every route named "changed.json" has
std::unique_ptr<Course> open_course_text(const std::string& text, const std::string& replace = {},
                                         const std::string& changed = {});

/// examples/course.json.
std::unique_ptr<Course> example_course(const std::string& replace = {});

} // namespace routeweigh::test
