// SPDX-License-Identifier: MIT
// The kinds of documents there are. A new one is a file with its builder and a line in document_list.cpp.
#pragma once

#include "chemistry/catalogue.hpp"
#include "compare/comparison.hpp"
#include "writing/blocks.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace routeweigh {

namespace bench {
class Experiment;
}

/// What a document can be made from; its kind says which of these it needs.
struct Subject {
    const Comparison* comparison = nullptr;
    std::size_t route = 0; ///< of the comparison, for a document about one route
    const Catalogue* catalogue = nullptr;
    const bench::Experiment* experiment = nullptr; ///< for the papers of the bench
    std::string words;                             ///< the id of a figure, a text to look for, an equation
};

struct DocumentKind {
    std::string_view id, title;
    std::string_view needs; ///< in words, for a help text
    writing::Document (*build)(const Subject&);
};

std::span<const DocumentKind> all_documents();

/// nullptr where there is none.
const DocumentKind* find_document(std::string_view id);

} // namespace routeweigh
