// SPDX-License-Identifier: MIT
// The stockroom's sheet: what to get, what to make, on which day, what it costs, and what stands on the
// benches.
#pragma once

#include "assess/bench/experiment.hpp"
#include "assess/stock/stock_list.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

/// \param shelf_name  file of the shelf; "" where none was given
writing::Document stock_list_document(const bench::Experiment& experiment, const stock::StockList& list,
                                      const stock::PriceList& prices, const std::string& shelf_name);

} // namespace routeweigh
