// SPDX-License-Identifier: MIT
// All papers of a course, or of a single experiment: one page a paper, and an index.
#pragma once

#include "app/course_session.hpp"
#include "writing/blocks.hpp"
#include "writing/workbook.hpp"

#include <string>
#include <variant>
#include <vector>

namespace routeweigh {

/// One file of the binder.
struct BinderPage {
    std::string path;  ///< below the folder, with forward slashes; its ending says the format
    std::string title; ///< in the index
    std::variant<writing::Document, writing::Workbook> content;
};

/// In reading order: the index, the term, then a folder for each experiment; of a single experiment the index
/// and its papers, without a folder. The same course gives the same pages.
/// \throws InputError where a table of the catalogue is faulty
std::vector<BinderPage> make_binder(const Course& course);

/// A route file and no course file? What is neither is for the reader of course files to refuse.
/// \throws InputError where it is no JSON
bool is_route_file(const SourcePtr& source);

} // namespace routeweigh
