// SPDX-License-Identifier: MIT
#include "cli/files.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <memory>
#include <system_error>

#include <unistd.h>

namespace routeweigh::cli {
namespace {

namespace fs = std::filesystem;

std::string reason() {
    return std::strerror(errno);
}

/// \throws FileError when not all of it arrives
void write_to(std::ostream& stream, const std::string& text, const std::string& name) {
    if (stream) errno = 0;
    stream << text << std::flush;
    if (!stream) throw FileError(fmt::format("cannot write {}: {}", name, reason()));
}

std::string read_stream(std::istream& stream, const std::string& name) {
    std::string text;
    char buffer[65536];
    while (stream.read(buffer, sizeof buffer) || stream.gcount() > 0) {
        text.append(buffer, static_cast<std::size_t>(stream.gcount()));
        if (text.size() > largest_source)
            throw FileError(fmt::format("{} has more than {} bytes (16 MB), the most that are read", name,
                                        largest_source));
    }
    if (stream.bad()) throw FileError(fmt::format("cannot read {}: {}", name, reason()));
    return text;
}

std::string read_file(const fs::path& path) {
    std::error_code error;
    const auto size = fs::file_size(path, error);
    if (!error && size > largest_source)
        throw FileError(
            fmt::format("{} has {} bytes; at most {} (16 MB) are read", path.string(), size, largest_source));
    errno = 0;
    std::ifstream stream(path, std::ios::binary);
    if (!stream) throw FileError(fmt::format("cannot read {}: {}", path.string(), reason()));
    return read_stream(stream, path.string());
}

bool is_json(const fs::path& file) {
    return file.extension() == ".json" && !file.stem().string().ends_with(".schema");
}

/// \param below  with those of the folders in it, but for hidden ones
std::vector<fs::path> json_files(const fs::path& folder, bool below) {
    std::vector<fs::path> files;
    std::error_code error, of_entry; // a link that leads nowhere is no folder, and reading it says what it is
    for (fs::recursive_directory_iterator entry(folder, error), end; !error && entry != end;
         entry.increment(error)) {
        const fs::path& path = entry->path();
        if (!entry->is_directory(of_entry)) {
            if (is_json(path)) files.push_back(path);
        } else if (!below || path.filename().string().starts_with('.')) {
            entry.disable_recursion_pending();
        }
    }
    if (error)
        throw FileError(fmt::format("cannot read the folder {}: {}", folder.string(), error.message()));
    std::sort(files.begin(), files.end());
    return files;
}

/// \throws FileError where it has been read already: a second reader would find it empty.
std::istream& standard_input() {
    static bool taken = false;
    if (taken) throw FileError("standard input (-) is asked for twice; it can be read once");
    taken = true;
    return std::cin;
}

} // namespace

std::vector<SourcePtr> read_sources(const std::vector<std::string>& paths) {
    std::vector<SourcePtr> sources;
    for (const std::string& path : paths) {
        if (path == "-") {
            sources.push_back(make_source("standard input", read_stream(standard_input(), "standard input")));
            continue;
        }
        std::error_code error; // a path that cannot be looked at cannot be read either, and then says why
        if (!fs::is_directory(path, error)) {
            sources.push_back(make_source(path, read_file(path)));
            continue;
        }
        const std::vector<fs::path> files = json_files(path, true);
        if (files.empty())
            throw FileError(fmt::format("the folder {} and those in it hold no route file (*.json)", path));
        for (const fs::path& file : files)
            sources.push_back(make_source(file.string(), read_file(file)));
    }
    return sources;
}

ReadBytes read_in_chunks(const std::string& path) {
    std::error_code error;
    if (fs::is_directory(path, error)) throw FileError(fmt::format("cannot read {}: it is a folder", path));
    auto file = std::make_shared<std::ifstream>();
    std::istream* stream = file.get();
    if (path == "-")
        stream = &standard_input();
    else {
        errno = 0;
        file->open(path, std::ios::binary);
        if (!*file) throw FileError(fmt::format("cannot read {}: {}", path, reason()));
    }
    return [file, stream, path](char* buffer, std::size_t size) {
        stream->read(buffer, static_cast<std::streamsize>(size));
        if (stream->bad()) throw FileError(fmt::format("cannot read {}: {}", path, reason()));
        return static_cast<std::size_t>(stream->gcount());
    };
}

std::vector<Source> read_catalogue_folder(const std::string& folder) {
    std::error_code error;
    if (!fs::is_directory(folder, error))
        throw FileError(fmt::format("{} is no folder with a catalogue", folder));
    std::vector<Source> sources;
    for (const fs::path& part : {fs::path(folder), fs::path(folder) / "schemes"}) {
        if (!fs::is_directory(part, error)) continue;
        for (const fs::path& file : json_files(part, false))
            sources.push_back({file.string(), read_file(file)});
    }
    if (sources.empty())
        throw FileError(fmt::format("the folder {} holds no catalogue file (*.json)", folder));
    return sources;
}

void refuse_overwriting(const std::string& output, const std::string& input) {
    std::error_code error; // set when one of them is no file, and then nothing is lost
    if (fs::equivalent(output, input, error) && !error)
        throw FileError(fmt::format("cannot write {}: it is one of the files that are read", output));
}

void write_file(const std::string& path, const std::string& text) {
    if (path == "-") {
        write_to(std::cout, text, "standard output");
        return;
    }
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (fs::is_directory(status)) throw FileError(fmt::format("cannot write {}: it is a folder", path));
    if (fs::exists(status) && !fs::is_regular_file(status)) {
        // A device or a pipe takes what is written to it; renaming would put a file in its place.
        std::ofstream stream(path, std::ios::binary);
        write_to(stream, text, path);
        return;
    }
    // Renaming would replace a file that its owner has made read-only, and a link instead of what it leads
    // to.
    if (fs::exists(status) && ((status.permissions() & fs::perms::owner_write) == fs::perms::none ||
                               ::access(path.c_str(), W_OK) != 0))
        throw FileError(fmt::format("cannot write {}: it is read-only", path));
    const fs::path target = fs::exists(status) ? fs::canonical(path, error) : fs::path(path);
    if (const fs::path folder = target.parent_path(); !folder.empty() && !fs::is_directory(folder, error))
        throw FileError(fmt::format("cannot write {}: there is no folder {}", path, folder.string()));

    const std::string temporary = fmt::format("{}.{}.part", target.string(), ::getpid());
    try {
        std::ofstream stream(temporary, std::ios::binary | std::ios::trunc);
        write_to(stream, text, path);
        stream.close();
        if (fs::exists(status)) fs::permissions(temporary, status.permissions(), error);
        fs::rename(temporary, target);
    } catch (const fs::filesystem_error& failure) {
        std::remove(temporary.c_str());
        throw FileError(fmt::format("cannot write {}: {}", path, failure.code().message()));
    } catch (...) {
        std::remove(temporary.c_str());
        throw;
    }
}

} // namespace routeweigh::cli
