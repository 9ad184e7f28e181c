// SPDX-License-Identifier: MIT
#include "cli/course_files.hpp"

#include "cli/files.hpp"

#include <filesystem>

namespace routeweigh::cli {

std::unique_ptr<Course> open_course(Context& context, const std::string& path, const std::string& replace,
                                    Problems& problems) {
    const std::vector<SourcePtr> sources = context.sources({path});
    if (sources.size() != 1) throw CallError("a course is one file");
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    const std::string given = replace.substr(replace.find('=') + 1);
    const LoadFile load = [&](const std::string& name) {
        // The route that replaces another one was named in the call, not in the file.
        const bool called = !replace.empty() && name == given;
        const std::filesystem::path file = called ? std::filesystem::path(name) : folder / name;
        const std::vector<SourcePtr> found = context.sources({file.lexically_normal().string()});
        if (found.size() != 1) throw CallError(file.string() + " is a folder; a course names files");
        return found.front();
    };
    return std::make_unique<Course>(sources.front(), load, context.catalogue(), context.rules(), replace,
                                    problems);
}

} // namespace routeweigh::cli
