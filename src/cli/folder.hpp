// SPDX-License-Identifier: MIT
// A folder of made files: writes only what changed, or says what is out of date.
#pragma once

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace routeweigh::cli {

/// Something made is older than what it was made from; the program ends with status 4.
class OutOfDate : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

class Folder {
  public:
    explicit Folder(std::string path) : path_(std::move(path)) {}

    /// \param name  below the folder, with forward slashes
    void put(const std::string& name, std::string text) { files_.emplace_back(name, std::move(text)); }

    /// Writes every file that differs from what stands there, or with `check` only compares. A list of the
    /// files is kept in the folder, and one that is no longer made is removed by it, with folders that this
    /// empties; other files are left alone. \throws FileError before anything is written where another file
    /// stands in the place of one of these; OutOfDate
    void finish(bool check) const;

  private:
    std::string path_;
    std::vector<std::pair<std::string, std::string>> files_;
};

} // namespace routeweigh::cli
