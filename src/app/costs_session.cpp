// SPDX-License-Identifier: MIT
#include "app/costs_session.hpp"

#include "app/waste.hpp"
#include "base/quantity_text.hpp"
#include "documents/costs_document.hpp"

#include <fmt/format.h>

namespace routeweigh {

writing::Document costs_document(const Assessment& route, const CostsRequest& request,
                                 const Catalogue& catalogue) {
    const stock::ClassPlan plan = class_plan(request.size);
    double session = 0.0;
    if (!request.session.empty()) {
        try {
            session = as_duration(parse_written(request.session)).in(unit::min);
        } catch (const QuantityError& error) {
            throw CallError(
                fmt::format("--session \"{}\": {}; write it as \"180 min\"", request.session, error.what()));
        }
    }
    const auto waste = waste_rules(catalogue, request.jurisdiction);
    const stock::Stockroom stockroom = stock::read_stockroom(catalogue);
    const utilities::UtilityData utilities = utilities::read_utility_data(catalogue);
    stock::PriceList prices;
    if (request.prices != nullptr) prices = stock::read_price_list(request.prices, catalogue);
    const course::House house{catalogue, *waste, stockroom, prices, utilities};
    return costs_document(course::use_of_class(route, plan, house), house, session);
}

} // namespace routeweigh
