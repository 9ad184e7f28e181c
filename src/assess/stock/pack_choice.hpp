// SPDX-License-Identifier: MIT
// Which packs to buy for a need: the exact cheapest combination of the sizes that a price list has.
#pragma once

#include "assess/stock/price_list.hpp"

#include <string>
#include <vector>

namespace routeweigh::stock {

struct PackCount {
    const Pack* pack = nullptr;
    int count = 0; ///< above 0
};

struct PackChoice {
    std::vector<PackCount> packs; ///< the largest first; none where nothing is bought or nothing has a price
    double grams = 0;             ///< in all of them
    double cost = 0;              ///< of all of them, in the currency of the list
    double left_over = 0;         ///< g

    bool empty() const { return packs.empty(); }
    /// Packs together. "1 x 5 L + 2 x 1 L" has 3.
    int count() const;
    /// "1 x 5 L + 2 x 1 L"; "" for none.
    std::string words() const;
};

/// The packs that cover the need and cost least together; of equal ones the fewest, and of these the ones
/// that leave least over. Where very many combinations cost nearly the same, the best of the first 200 000
/// places of the search. \param grams  needed; nothing is bought for 0
PackChoice choose_packs(const PriceList& prices, const Material& material, double grams);

} // namespace routeweigh::stock
