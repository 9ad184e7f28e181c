// SPDX-License-Identifier: MIT
#include "app/stock_session.hpp"

#include "documents/stock_list_document.hpp"

namespace routeweigh {

writing::Document stock_document(const bench::Experiment& experiment, const StockRequest& request,
                                 const Catalogue& catalogue, Problems& problems) {
    const stock::ClassPlan plan = class_plan(request.size);
    const stock::Stockroom stockroom = stock::read_stockroom(catalogue);
    stock::Shelf shelf;
    if (!request.shelf_name.empty()) {
        CsvReader rows(request.shelf_name, request.shelf);
        shelf = stock::read_shelf(rows, catalogue, problems);
    }
    stock::PriceList prices;
    if (request.prices != nullptr) prices = stock::read_price_list(request.prices, catalogue);
    const stock::StockList list = make_stock_list(
        experiment.assessment(),
        stock::waste_needs_of_run(experiment.assessment(), experiment.waste(), experiment.rules().streams),
        plan, stockroom, catalogue, shelf, prices);
    return stock_list_document(experiment, list, prices, request.shelf_name);
}

} // namespace routeweigh
