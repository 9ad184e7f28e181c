// SPDX-License-Identifier: MIT
#include "cli/course_files.hpp"

#include "base/problem.hpp"
#include "base/text.hpp"
#include "cli/files.hpp"

#include <filesystem>
#include <string>
#include <system_error>
#include <vector>

namespace routeweigh::cli {
namespace {

namespace fs = std::filesystem;

/// The path with the name of a file of the same folder that is spelt nearly so; "" where there is none.
std::string near_path(const std::string& written, const fs::path& missing) {
    const fs::path folder = missing.has_parent_path() ? missing.parent_path() : fs::path(".");
    std::vector<std::string> names;
    std::error_code error;
    for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error))
        names.push_back(entry->path().filename().string());
    const std::string near = nearest(missing.filename().string(), names);
    return near.empty() ? near : (fs::path(written).parent_path() / near).string();
}

} // namespace

std::unique_ptr<Course> open_course(Context& context, const SourcePtr& source, const std::string& replace,
                                    Problems& problems) {
    const fs::path folder = fs::path(source->name).parent_path();
    const LoadFile load = [&](const std::string& name, NamedBy named) {
        if (named == NamedBy::call)
            return context.source(fs::path(name).lexically_normal().string(), "each name in a course");
        const fs::path file = (folder / name).lexically_normal();
        try {
            return context.source(file.string(), "each name in a course");
        } catch (const FileError& error) {
            throw InputError(Problem{Severity::error, error.what(), {}, {}, near_path(name, file)});
        }
    };
    return std::make_unique<Course>(source, load, context.catalogue(), context.rules(), replace, problems);
}

} // namespace routeweigh::cli
