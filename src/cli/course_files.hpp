// SPDX-License-Identifier: MIT
// Opens a course file and what it names; paths in it are relative to its folder.
#pragma once

#include "app/course_session.hpp"
#include "cli/command.hpp"

#include <memory>
#include <string>

namespace routeweigh::cli {

/// \param source  named by its path, to which those in it are relative
/// \param replace  as Course takes it; its route is relative to where the program was called
/// \throws FileError, CallError, InputError
std::unique_ptr<Course> open_course(Context& context, const SourcePtr& source, const std::string& replace,
                                    Problems& problems);

} // namespace routeweigh::cli
