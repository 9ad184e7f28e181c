// SPDX-License-Identifier: MIT
// The stock list for programs: every need, line, recipe and piece, unrounded.
#pragma once

#include "assess/bench/experiment.hpp"
#include "assess/stock/stock_list.hpp"
#include "writing/blocks.hpp"

namespace routeweigh::documents {

writing::MachineTree stock_list_tree(const bench::Experiment& experiment, const stock::StockList& list,
                                     const stock::PriceList& prices);
/// One row a line of the order.
writing::DataRows stock_list_rows(const stock::StockList& list, const stock::PriceList& prices);

} // namespace routeweigh::documents
