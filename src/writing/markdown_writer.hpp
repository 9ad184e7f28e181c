// SPDX-License-Identifier: MIT
// Writes a document as Markdown with pipe tables; charts become their text alternative and the table of their
// data.
#pragma once

#include "writing/writer.hpp"

namespace routeweigh::writing {

std::string write_markdown(const Document& document, const WriteOptions& options);

} // namespace routeweigh::writing
