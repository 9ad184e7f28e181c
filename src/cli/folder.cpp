// SPDX-License-Identifier: MIT
#include "cli/folder.hpp"

#include "base/text.hpp"
#include "cli/files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <optional>
#include <set>
#include <sstream>

namespace routeweigh::cli {
namespace {

namespace fs = std::filesystem;

constexpr const char* list_name = "binder-files.txt";

std::optional<std::string> content_of(const fs::path& file) {
    std::error_code error;
    if (!fs::is_regular_file(file, error)) return std::nullopt;
    std::ifstream stream(file, std::ios::binary);
    std::stringstream text;
    text << stream.rdbuf();
    return text.str();
}

void make_folder(const fs::path& folder) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (error)
        throw FileError(fmt::format("cannot make the folder {}: {}", folder.string(), error.message()));
}

/// Names in the list of an earlier run, without any that would leave the folder.
std::set<std::string> listed(const fs::path& folder) {
    std::set<std::string> names;
    std::istringstream lines(content_of(folder / list_name).value_or(""));
    for (std::string line; std::getline(lines, line);)
        if (!line.empty() && fs::path(line).is_relative() && line.find("..") == std::string::npos)
            names.insert(line);
    return names;
}

} // namespace

void Folder::finish(bool check) const {
    const fs::path folder(path_);
    std::error_code error;
    if (fs::exists(folder, error) && !fs::is_directory(folder, error))
        throw FileError(fmt::format("cannot write into {}: it is no folder", path_));
    auto files = files_;
    std::string list;
    for (const auto& [name, text] : files_)
        list += name + "\n";
    files.emplace_back(list_name, list);

    std::vector<std::string> changed;
    std::set<std::string> gone = listed(folder);
    for (const auto& [name, text] : files) {
        gone.erase(name);
        if (content_of(folder / name) != text) changed.push_back(name);
    }
    std::vector<std::string> stale = changed;
    for (const std::string& name : gone)
        if (fs::exists(folder / name, error)) stale.push_back(name);
    if (check) {
        if (!stale.empty()) throw OutOfDate(fmt::format("{} is out of date: {}", path_, join(stale, ", ")));
        write_file("-", fmt::format("{} is up to date: {} files\n", path_, files.size()));
        return;
    }
    for (const auto& [name, text] : files) {
        if (std::find(changed.begin(), changed.end(), name) == changed.end()) continue;
        make_folder((folder / name).parent_path());
        write_file((folder / name).string(), text);
    }
    for (const std::string& name : gone)
        fs::remove(folder / name, error);
    write_file("-", fmt::format("{}: {} files, {} written, {} removed\n", path_, files.size(), changed.size(),
                                stale.size() - changed.size()));
}

} // namespace routeweigh::cli
