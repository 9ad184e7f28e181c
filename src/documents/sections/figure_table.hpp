// SPDX-License-Identifier: MIT
// A group of figures by route, each with its difference from the baseline, what is counted, and who defined
// it.
#pragma once

#include "documents/report_view.hpp"

#include <string>
#include <vector>

namespace routeweigh::documents {

/// \param silent  receives the figures that no route has, with the reason
writing::Table figure_table(const ReportView& view, FigureGroup group, std::vector<std::string>& silent);

} // namespace routeweigh::documents
