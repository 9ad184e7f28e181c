// SPDX-License-Identifier: MIT
// The sections there are, one file each.
#pragma once

#include "documents/sections/section.hpp"

namespace routeweigh::documents {

void add_compared(const ReportView& view, Blocks& blocks);
void add_in_short(const ReportView& view, Blocks& blocks);
void add_figures(const ReportView& view, Blocks& blocks);
void add_mass_flow(const ReportView& view, Blocks& blocks);
void add_reactions(const ReportView& view, Blocks& blocks);
void add_hazard(const ReportView& view, Blocks& blocks);
void add_flask(const ReportView& view, Blocks& blocks);
void add_bottles_and_streams(const ReportView& view, Blocks& blocks);
void add_workings(const ReportView& view, Blocks& blocks);
void add_sources(const ReportView& view, Blocks& blocks);
void add_waste(const ReportView& view, Blocks& blocks);
bool has_waste_tables(const ReportView& view);

} // namespace routeweigh::documents
