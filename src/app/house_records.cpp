// SPDX-License-Identifier: MIT
#include "app/house_records.hpp"

#include <utility>

namespace routeweigh {

HouseRecords::HouseRecords(const Catalogue& catalogue, streams::LocalRules local, const SourcePtr& prices)
    : waste_(catalogue, std::move(local)), stockroom_(stock::read_stockroom(catalogue)),
      utilities_(utilities::read_utility_data(catalogue)),
      prices_(prices == nullptr ? stock::PriceList{} : stock::read_price_list(prices, catalogue)),
      house_{catalogue, waste_, stockroom_, prices_, utilities_} {}

} // namespace routeweigh
