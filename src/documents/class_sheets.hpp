// SPDX-License-Identifier: MIT
// The sheets of a workbook that follow the size of the class: stock, what makes the waste ready, packs,
// costs.
#pragma once

#include "assess/course/class_use.hpp"
#include "documents/route_sheets.hpp"

namespace routeweigh::documents {

/// What a class needs of each material: "Stock". Students, sections and extra are set here.
writing::Sheet stock_sheet(const BookPlan& plan, const course::ClassUse& use);
/// What the waste plan asks to have at hand, as written: "Treatment".
writing::Sheet treatment_sheet(const course::ClassUse& use);
/// Materials to fetch, shelf, packs and their price: "Order". Solutions that are made stand as what they are
/// made of.
writing::Sheet order_sheet(const course::ClassUse& use);
/// Packs, disposal, power and water of the class: "Costs". Volumes of waste are those as written.
writing::Sheet costs_sheet(const course::ClassUse& use, const course::House& house);

} // namespace routeweigh::documents
