// SPDX-License-Identifier: MIT
#include "app/costs_session.hpp"

#include "app/house_records.hpp"
#include "base/quantity_text.hpp"
#include "documents/costs_document.hpp"
#include "documents/route_workbook.hpp"

#include <fmt/format.h>

namespace routeweigh {

stock::ClassPlan class_plan(const CostsRequest& request) {
    stock::ClassPlan plan = class_plan(request.size);
    if (request.session.empty()) return plan;
    try {
        plan.session = as_duration(parse_written(request.session)).in(unit::min);
    } catch (const QuantityError& error) {
        throw CallError(
            fmt::format("--session \"{}\": {}; write it as \"180 min\"", request.session, error.what()));
    }
    return plan;
}

writing::Document costs_document(const Assessment& route, const CostsRequest& request,
                                 const Catalogue& catalogue) {
    const stock::ClassPlan plan = class_plan(request);
    const HouseRecords records(catalogue, request.local, request.prices);
    return costs_document(course::use_of_class(route, plan, records.house()), records.house());
}

writing::Workbook class_workbook(const Assessment& route, const CostsRequest& request,
                                 const Catalogue& catalogue) {
    const stock::ClassPlan plan = class_plan(request);
    const HouseRecords records(catalogue, request.local, request.prices);
    return route_workbook(course::use_of_class(route, plan, records.house()), records.house());
}

} // namespace routeweigh
