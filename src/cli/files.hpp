// SPDX-License-Identifier: MIT
// The only disk access of the program.
#pragma once

#include "app/session.hpp"

#include <stdexcept>
#include <string>
#include <vector>

namespace routeweigh::cli {

/// A path cannot be read or written.
class FileError : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// A file, every *.json of a folder and of those in it, in order of name, or "-" for standard input.
/// \throws FileError for a missing path, a folder without route files, a file above the size that a source
/// may have
std::vector<SourcePtr> read_sources(const std::vector<std::string>& paths);

/// A file of any length, or "-" for standard input, opened now and read when asked for.
/// \throws FileError for a path that cannot be opened, and later when reading fails
ReadBytes read_in_chunks(const std::string& path);

/// All *.json of a catalogue folder and its folder "schemes".
std::vector<Source> read_catalogue_folder(const std::string& folder);

/// \throws FileError when both are one file
void refuse_overwriting(const std::string& output, const std::string& input);

/// Writes beside the target under a temporary name and renames, so that a killed run leaves the old file
/// whole. "-" is standard output; a device or pipe is written to as it is.
/// \throws FileError, and then the old file is as it was
void write_file(const std::string& path, const std::string& text);

} // namespace routeweigh::cli
