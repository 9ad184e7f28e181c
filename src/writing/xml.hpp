// SPDX-License-Identifier: MIT
// A tree of XML elements, printed with everything escaped.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace routeweigh::writing {

struct Xml {
    std::string name; ///< empty: this is text
    std::string text; ///< of a text
    std::vector<std::pair<std::string, std::string>> attributes = {};
    std::vector<Xml> children = {};

    /// An element. Names are our own, never taken from a file.
    static Xml element(std::string name, std::vector<std::pair<std::string, std::string>> attributes = {},
                       std::vector<Xml> children = {}) {
        return {std::move(name), {}, std::move(attributes), std::move(children)};
    }
    /// An element that holds only text.
    static Xml leaf(std::string name, std::string words) {
        return {std::move(name), {}, {}, {Xml{{}, std::move(words)}}};
    }
    static Xml words(std::string text) { return {{}, std::move(text)}; }

    Xml& add(Xml child) {
        children.push_back(std::move(child));
        return *this;
    }
};

/// A document with its declaration; control characters that XML cannot hold become U+FFFD. Elements stand on
/// lines of their own unless text stands beside them.
std::string write_xml(const Xml& root);

} // namespace routeweigh::writing
