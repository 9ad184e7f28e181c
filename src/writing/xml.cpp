// SPDX-License-Identifier: MIT
#include "writing/xml.hpp"

#include "writing/escape.hpp"

#include <algorithm>

namespace routeweigh::writing {
namespace {

/// HTML's named references are unknown to XML, but the five that html_escape() writes are XML's own.
std::string escaped(const std::string& text) {
    return html_escape(text);
}

void print(const Xml& node, int depth, bool inline_text, std::string& out) {
    if (node.name.empty()) {
        out += escaped(node.text);
        return;
    }
    const std::string indent = inline_text ? "" : std::string(static_cast<std::size_t>(2 * depth), ' ');
    out += indent + "<" + node.name;
    for (const auto& [name, value] : node.attributes)
        out += " " + name + "=\"" + escaped(value) + "\"";
    if (node.children.empty()) {
        out += "/>";
    } else {
        const bool mixed = inline_text || std::any_of(node.children.begin(), node.children.end(),
                                                      [](const Xml& child) { return child.name.empty(); });
        out += mixed ? ">" : ">\n";
        for (const Xml& child : node.children)
            print(child, depth + 1, mixed, out);
        out += (mixed ? "" : indent) + "</" + node.name + ">";
    }
    if (!inline_text) out += "\n";
}

} // namespace

std::string write_xml(const Xml& root) {
    std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    print(root, 0, false, out);
    return out;
}

} // namespace routeweigh::writing
