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

/// Nothing that somebody else put there is written over. \throws FileError
void refuse_foreign(const fs::path& folder, const std::vector<std::string>& changed,
                    const std::set<std::string>& own) {
    std::vector<std::string> foreign;
    for (const std::string& name : changed) {
        std::error_code error;
        if (name != list_name && !own.contains(name) && fs::exists(folder / name, error))
            foreign.push_back((folder / name).string());
    }
    if (!foreign.empty())
        throw FileError(
            fmt::format("not written over, since {} does not list it as made here: {}; move it away "
                        "or choose another folder",
                        (folder / list_name).string(), join(foreign, ", ")));
}

/// Removes a file, and the folders below `folder` that this leaves empty.
void remove_with_folders(const fs::path& folder, const fs::path& name) {
    std::error_code error;
    fs::remove(folder / name, error);
    for (fs::path part = name.parent_path(); !part.empty() && !error; part = part.parent_path())
        fs::remove(folder / part, error); // refuses a folder that holds something
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
    const std::set<std::string> own = listed(folder);
    std::set<std::string> gone = own;
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
    refuse_foreign(folder, changed, own);
    for (const auto& [name, text] : files) {
        if (std::find(changed.begin(), changed.end(), name) == changed.end()) continue;
        make_folder((folder / name).parent_path());
        write_file((folder / name).string(), text);
    }
    for (const std::string& name : gone)
        remove_with_folders(folder, name);
    write_file("-", fmt::format("{}: {} files, {} written, {} removed\n", path_, files.size(), changed.size(),
                                stale.size() - changed.size()));
}

} // namespace routeweigh::cli
