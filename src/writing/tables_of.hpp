// SPDX-License-Identifier: MIT
// The tables of a document as machine data, for documents that bring no data of their own.
#pragma once

#include "writing/blocks.hpp"

namespace routeweigh::writing {

/// Every table and every chart's table, in reading order, those folded away included.
std::vector<Table> tables_of(const Document& document);

/// Long form: one cell of one table a row, with the unrounded number where there is one, under the section
/// and the group of rows that it stands in, with the number of the row in its table.
DataRows data_rows(const Document& document);

/// {"document", "title", "tables": [{"caption", "columns", "rows"}]}
MachineTree machine_tree(const Document& document);

} // namespace routeweigh::writing
