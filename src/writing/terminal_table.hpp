// SPDX-License-Identifier: MIT
// Sets a table in fixed-pitch lines, wrapped and if need be cut by columns to fit a width.
#pragma once

#include "writing/blocks.hpp"
#include "writing/ink.hpp"

#include <string>
#include <vector>

namespace routeweigh::writing {

/// Without the caption, which the writer numbers; with remarks and lettered notes.
std::vector<std::string> terminal_table(const Table& table, int width, const Ink& ink);

} // namespace routeweigh::writing
