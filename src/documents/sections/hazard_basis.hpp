// SPDX-License-Identifier: MIT
// On what the hazard figures rest: limits, bands, memory, and the mass that nobody has assessed.
#pragma once

#include "documents/report_view.hpp"

namespace routeweigh::documents {

/// Air demand in bottles by what it rests on, with who contributes most.
writing::Table air_basis_table(const ReportView& view);

/// Shares on bands and from memory, and grams per gram of product without assessment, by place, and of what.
writing::Table basis_table(const ReportView& view);

/// Of all decades of the score, the share that rests on recalled data. 0 to 1.
double share_from_memory(const HazardGrid& grid);

/// Per place, folded: who contributes most to each cell of each route.
std::vector<writing::Folded> contributor_folds(const ReportView& view);

} // namespace routeweigh::documents
