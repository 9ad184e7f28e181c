// SPDX-License-Identifier: MIT
// Turns a workbook into an Office Open XML spreadsheet (ECMA-376) by libxlsxwriter, which writes files only.
#pragma once

#include "writing/workbook.hpp"

#include <string>

namespace routeweigh::cli {

/// The bytes of the file; the same workbook gives the same bytes.
/// Text is written as text: a name that looks like a formula stays a name.
/// \throws FileError when the folder for temporary files cannot be written
std::string xlsx_bytes(const writing::Workbook& workbook);

} // namespace routeweigh::cli
