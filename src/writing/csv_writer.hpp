// SPDX-License-Identifier: MIT
// Writes a document's data rows as CSV by RFC 4180, guarded against spreadsheet formulas.
#pragma once

#include "writing/writer.hpp"

namespace routeweigh::writing {

std::string write_csv(const Document& document, const WriteOptions& options);

} // namespace routeweigh::writing
