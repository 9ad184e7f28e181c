// SPDX-License-Identifier: MIT
// What a Document holds; known only to document.cpp and field.cpp.
#pragma once

#include "input/field.hpp"

#include <nlohmann/json.hpp>

#include <cstddef>
#include <deque>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::detail {

struct Reading;

// A value that somebody asked for, with the way back to the top. Made on demand, kept as long as the
// document.
struct Node {
    Reading* reading = nullptr;
    const nlohmann::json* value = nullptr; // nullptr: neutral, below something missing
    const Node* parent = nullptr;
    std::string_view key;  // in its object, where the parent is one
    std::size_t index = 0; // in its list, where the parent is one
    bool failed = false;   // a problem was recorded when this value was read

    // Members asked for so far; nullptr for those that were not there.
    std::map<std::string, Node*, std::less<>> members;
    std::vector<Node*> elements;
};

// One call of Document::root(): its collector, and what was asked for.
struct Reading {
    const DocumentState* document = nullptr;
    Problems* problems = nullptr;
    int errors = 0; // recorded so far
    int warnings = 0;
    std::deque<Node> nodes;
    Node neutral;
};

struct DocumentState {
    SourcePtr source;
    std::size_t begin = 0; // the part of the source that this document is
    std::size_t end = 0;
    std::string prefix; // pointer of the part in the whole
    nlohmann::json value;
    std::deque<Reading> readings;

    std::string_view text() const { return std::string_view(source->text).substr(begin, end - begin); }
};

} // namespace routeweigh::detail
