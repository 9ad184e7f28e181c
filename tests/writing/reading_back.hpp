// SPDX-License-Identifier: MIT
// Small readers of their own for what the writers print: CSV by RFC 4180, and the tags of HTML and SVG.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::writing {

/// Rows of fields; throws std::runtime_error at what RFC 4180 does not allow.
std::vector<std::vector<std::string>> read_csv(std::string_view text);

struct Tag {
    std::string name;
    std::vector<std::pair<std::string, std::string>> attributes;
    bool closes = false; ///< </name>
    bool empty = false;  ///< <name/>

    std::string attribute(std::string_view wanted) const;
};

struct Markup {
    std::vector<Tag> tags;
    std::string text; ///< what a reader sees, entities resolved
};

/// Reads strictly: attributes in double quotes, no bare "<" or "&", every element closed in order except the
/// void elements of HTML. Throws std::runtime_error otherwise.
Markup read_markup(std::string_view text);

} // namespace routeweigh::writing
