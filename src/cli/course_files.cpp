// SPDX-License-Identifier: MIT
#include "cli/course_files.hpp"

#include "cli/files.hpp"

#include <filesystem>

namespace routeweigh::cli {

std::unique_ptr<Course> open_course(Context& context, const SourcePtr& source, const std::string& replace,
                                    Problems& problems) {
    const std::filesystem::path folder = std::filesystem::path(source->name).parent_path();
    const LoadFile load = [&](const std::string& name, NamedBy named) {
        const std::filesystem::path file =
            named == NamedBy::call ? std::filesystem::path(name) : folder / name;
        return context.source(file.lexically_normal().string(), "each name in a course");
    };
    return std::make_unique<Course>(source, load, context.catalogue(), context.rules(), replace, problems);
}

} // namespace routeweigh::cli
