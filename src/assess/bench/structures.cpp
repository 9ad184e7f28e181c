// SPDX-License-Identifier: MIT
#include "assess/bench/structures.hpp"

#include "assess/streams/scheme_file.hpp"

#include <fmt/core.h>

namespace routeweigh::bench {
namespace {

/// Text of path data in whole numbers: it goes into pages as it stands, so nothing else may be in it.
std::string path_data(const Field& field) {
    std::string path = field.is_text() ? field.text() : std::string();
    if (path.find_first_not_of("MLQCZ0123456789 -") != std::string::npos)
        field.problem("holds more than path data: the letters M, L, Q, C, Z and whole numbers");
    return path;
}

} // namespace

Structures Structures::read(const Source& source) {
    const streams::SchemeFile file(source, "structures");
    Structures structures;
    for (const Field& row : file.root()["structures"].items()) {
        const std::string id = row["substance"].text();
        Entry entry{row["smiles"].text(),
                    {row["width"].number(), row["height"].number(), path_data(row["lines"]), ""}};
        if (const auto shapes = row.maybe("shapes")) entry.structure.shapes = path_data(*shapes);
        if (!(entry.structure.width > 0 && entry.structure.height > 0))
            row.problem("width and height of a drawing are above 0");
        if (!structures.entries_.emplace(id, std::move(entry)).second)
            row["substance"].problem(fmt::format("\"{}\" stands twice", id));
        row.close();
    }
    file.finish();
    return structures;
}

const Structure* Structures::find(const Substance& substance) const {
    const auto found = entries_.find(substance.id);
    if (found == entries_.end() || found->second.smiles != substance.smiles) return nullptr;
    return &found->second.structure;
}

} // namespace routeweigh::bench
