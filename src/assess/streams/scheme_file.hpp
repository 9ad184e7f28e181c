// SPDX-License-Identifier: MIT
// What the data files of this folder have in common: id, kind, a list of sources by key, and rows that each
// carry a source and a standing.
#pragma once

#include "base/provenance.hpp"
#include "input/field.hpp"

#include <map>
#include <string>
#include <string_view>

namespace routeweigh {
class Catalogue;
}

namespace routeweigh::streams {

class SchemeFile {
  public:
    /// Opens the file and reads its head. \throws InputError where it is no JSON
    SchemeFile(const Source& source, std::string_view kind);
    SchemeFile(const SchemeFile&) = delete;
    SchemeFile& operator=(const SchemeFile&) = delete;

    const Field& root() const { return root_; }
    const std::string& id() const { return id_; }
    const std::string& title() const { return title_; }

    /// Members "source" (a key of the list of sources, or words) and "standing" of a row.
    Provenance provenance(const Field& row) const;

    /// A number with its origin: {"value": 1.0, "source": ..., "standing": ...}.
    Sourced<double> number(std::string_view key) const;

    /// Refuses unknown keys and throws InputError with all that was found.
    void finish() const;

  private:
    mutable Problems problems_;
    Document document_;
    Field root_;
    std::string id_, title_;
    std::map<std::string, std::string> sources_;
};

/// The number of a reactivity group, 1 to 999.
int group_number(const Field& field);

/// The text of a member, or "".
std::string text_or_empty(const Field& object, std::string_view key);

/// The scheme of this stem. \throws InputError where the catalogue has none
const Source& required_scheme(const Catalogue& catalogue, std::string_view stem);

} // namespace routeweigh::streams
