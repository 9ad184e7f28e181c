// SPDX-License-Identifier: MIT
// The certainty of a comparison as data for programs.
#pragma once

#include "compare/uncertainty/variance_shares.hpp"
#include "documents/report_view.hpp"
#include "writing/machine_tree.hpp"

#include <vector>

namespace routeweigh::documents {

/// \pre the view has a certainty
writing::MachineTree certainty_tree(const ReportView& view);

/// What each input has to do with the spread of one figure. \param shares  by output of the model
writing::MachineTree budget_tree(const ReportView& view, std::size_t route, std::size_t figure,
                                 const std::vector<VarianceShares>& shares);

} // namespace routeweigh::documents
