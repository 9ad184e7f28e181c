// SPDX-License-Identifier: MIT
// Writes a document as lines of a terminal: plain text, or with bold and dim when asked.
#pragma once

#include "writing/writer.hpp"

namespace routeweigh::writing {

std::string write_terminal(const Document& document, const WriteOptions& options);

} // namespace routeweigh::writing
