// SPDX-License-Identifier: MIT
// How often each route takes each rank by a figure: a picture, and the shares in a table.
#pragma once

#include "documents/report_view.hpp"

namespace routeweigh::documents {

/// Whether shares of the draws by rank mean anything for a figure.
enum class RanksBy {
    runs,
    rests_on_assumed, ///< on an assumed yield of some route
    nothing ///< it does not vary, has no better end, or some route has none or one that nothing bounds
};
RanksBy ranks_by(const ReportView& view, std::size_t figure);

/// One bar a route, parted by ranks, and the shares behind it, folded. \pre ranks_by() is `runs`, several
/// routes
void add_ranks(const ReportView& view, std::size_t figure, std::vector<writing::Block>& blocks);

} // namespace routeweigh::documents
