// SPDX-License-Identifier: MIT
// Writes a document as one HTML page that needs no script, no network and no second file.
#pragma once

#include "writing/writer.hpp"

namespace routeweigh::writing {

std::string write_html(const Document& document, const WriteOptions& options);

} // namespace routeweigh::writing
