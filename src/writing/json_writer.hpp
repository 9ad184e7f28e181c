// SPDX-License-Identifier: MIT
// Writes a document's machine tree as JSON: member order kept, numbers unrounded, what is missing null.
#pragma once

#include "writing/writer.hpp"

namespace routeweigh::writing {

std::string write_json(const Document& document, const WriteOptions& options);

} // namespace routeweigh::writing
