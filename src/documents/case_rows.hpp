// SPDX-License-Identifier: MIT
// What a proposal gains and loses, row by row: numbers that are better when smaller, and lists.
#pragma once

#include "assess/classified_route.hpp"
#include "assess/stock/price_list.hpp"
#include "compare/proposal.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

enum class RowStanding {
    more, ///< whatever plausible yield the proposed method has
    less, ///< likewise
    open, ///< a plausible difference in yield, or the boundary, turns it round or makes it nothing, or a
          ///< price or a time that is lacking could
    same  ///< at the precision that is printed
};

std::string_view id_of(RowStanding standing); ///< "more"

struct CaseRow {
    std::string id, name, unit;
    int decimals = 0;
    double now = 0, proposed = 0;
    double low = 0, high = 0; ///< of the proposed method over plausible yields
    RowStanding standing = RowStanding::same;
};

/// For the whole class; per gram of product only where both make the same product.
std::vector<CaseRow> case_rows(const Proposal& proposal, const stock::PriceList& prices);

/// What is there only after the change, and what only before it.
struct CaseList {
    std::string id, name;
    std::vector<std::string> comes, goes;
    bool coming_is_loss = true; ///< else the going is
};

/// Hazard statements with the bottles not assessed, bottles on the bench, ways of the waste, techniques of
/// the week, and where a session is said what fits into it. \param rules  that classify the bottles
std::vector<CaseList> case_lists(const Proposal& proposal, const ClassificationRules& rules);

} // namespace routeweigh::documents
