// SPDX-License-Identifier: MIT
#include "app/labels_session.hpp"

#include "app/session.hpp"
#include "assess/bench/bench_rules.hpp"
#include "assess/streams/scheme_file.hpp"
#include "base/text.hpp"
#include "documents/labels_document.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

stock::LabelSheetSize find_sheet(const LabelRequest& request, const Catalogue& catalogue) {
    const std::vector<stock::LabelSheetSize> sheets = stock::read_label_sheets(
        request.sheets != nullptr ? *request.sheets : streams::required_scheme(catalogue, "label_sheets"));
    std::vector<std::string> names;
    for (const stock::LabelSheetSize& sheet : sheets) {
        if (sheet.name == request.sheet) return sheet;
        names.push_back(sheet.name);
    }
    throw CallError(no_such("sheet", request.sheet, names));
}

} // namespace

writing::Document labels_document(const Assessment& route, const LabelRequest& request,
                                  const Catalogue& catalogue) {
    const stock::ClassPlan plan = class_plan(request.size);
    const stock::LabelSheetSize sheet = find_sheet(request, catalogue);
    if (request.first < 1 || request.first > sheet.columns * sheet.rows)
        throw CallError(fmt::format("--first {}: a sheet {} has labels 1 to {}", request.first, sheet.name,
                                    sheet.columns * sheet.rows));
    if (request.copies < 1 || request.copies > 1000)
        throw CallError(fmt::format("--copies {}: from 1 to 1000", request.copies));
    if (!request.date.empty() && !read_day(request.date))
        throw CallError(fmt::format("--date \"{}\" is no day; write it as 2026-09-14", request.date));
    const streams::StreamRules stream_rules(catalogue, request.local);
    const streams::RouteWaste waste = assess_waste(route.route(), stream_rules);
    return labels_document(route, contents_of(waste, plan.runs(), stream_rules.local),
                           read_mixture_rules(catalogue, bench::regime_of(request.local)), sheet,
                           {request.course, request.contact, request.date, request.first, request.copies,
                            request.bottles, request.waste});
}

} // namespace routeweigh
