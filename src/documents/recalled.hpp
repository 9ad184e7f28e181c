// SPDX-License-Identifier: MIT
// Data that were recalled and not read are told as such wherever they are shown.
#pragma once

#include <string>

namespace routeweigh::documents {

/// The source of a recalled datum: "from memory", "from memory: EU CLP Annex VI".
inline std::string from_memory(const std::string& source) {
    return (source.starts_with("memory") ? "from " : "from memory: ") + source;
}

} // namespace routeweigh::documents
