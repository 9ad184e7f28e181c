// SPDX-License-Identifier: MIT
#include "app/costs_session.hpp"

#include "app/house_records.hpp"
#include "base/quantity_text.hpp"
#include "documents/costs_document.hpp"

#include <fmt/format.h>

namespace routeweigh {

writing::Document costs_document(const Assessment& route, const CostsRequest& request,
                                 const Catalogue& catalogue) {
    stock::ClassPlan plan = class_plan(request.size);
    if (!request.session.empty()) {
        try {
            plan.session = as_duration(parse_written(request.session)).in(unit::min);
        } catch (const QuantityError& error) {
            throw CallError(
                fmt::format("--session \"{}\": {}; write it as \"180 min\"", request.session, error.what()));
        }
    }
    const HouseRecords records(catalogue, request.local, request.prices);
    return costs_document(course::use_of_class(route, plan, records.house()), records.house());
}

} // namespace routeweigh
