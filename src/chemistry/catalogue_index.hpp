// SPDX-License-Identifier: MIT
// Where each entry of the catalogue files stands and what it is called, found by a quick skim without parsing
// it.
#pragma once

#include "base/problem.hpp"
#include "input/source.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace routeweigh {

struct CatalogueEntry {
    enum class Kind { substance, material };

    Kind kind = Kind::substance;
    SourcePtr source;
    std::size_t begin = 0; // bytes of the source
    std::size_t end = 0;
    std::string pointer;
    std::string id;
    std::string name;
    std::vector<std::string> synonyms;
    std::string cas;
    std::string formula; // as written, not yet read
};

struct Scheme {
    std::string stem; // of the file name
    SourcePtr source;
};

class Skim;

class CatalogueIndex {
  public:
    // Throws InputError where a source has no such lists, an entry has no id or name, or a name belongs to
    // two.
    explicit CatalogueIndex(const std::vector<SourcePtr>& sources);

    const std::vector<CatalogueEntry>& entries() const { return entries_; }
    const std::vector<Scheme>& schemes() const { return schemes_; }

    // The entry with this id, name, synonym or CAS number, folded; nullptr where there is none.
    const CatalogueEntry* find(std::string_view name) const;

  private:
    void add_source(const SourcePtr& source);
    bool add_list(const SourcePtr& source, Skim& skim, CatalogueEntry::Kind kind);
    void add_names();
    void problem(const CatalogueEntry& entry, std::string message, const CatalogueEntry* second = nullptr);

    std::vector<CatalogueEntry> entries_;
    std::vector<Scheme> schemes_;
    std::unordered_map<std::string, std::size_t> by_name_;
    std::vector<Problem> problems_;
};

} // namespace routeweigh
