// SPDX-License-Identifier: MIT
#include "documents/route_workbook.hpp"

#include "documents/cautions.hpp"
#include "documents/class_sheets.hpp"
#include "documents/route_sheets.hpp"
#include "documents/version.hpp"

#include <fmt/format.h>

#include <utility>

namespace routeweigh {
namespace {

using writing::CellUse;
using writing::Sheet;
using writing::SheetCell;

std::string plain(const writing::Text& text) {
    std::string words;
    for (const writing::Run& run : text.runs)
        words += run.text;
    return words;
}

Sheet about_sheet(const Assessment& assessment, bool yields_live) {
    const Route& route = assessment.route();
    Sheet sheet{"About", {110}, {}, 0};
    const auto say = [&sheet](std::string words, CellUse use = CellUse::text) {
        sheet.add({SheetCell::words(std::move(words), use)});
    };
    say(fmt::format("{}: {}", route.id, route.title), CellUse::title);
    say(fmt::format("Product: {}", route.product->name));
    say(fmt::format("Source: {}", route.origin));
    say(fmt::format("Status: {}{}", route.status, assessment.yield_assumed() ? "; yield assumed" : ""));
    say("");
    say("Framed cells may be changed; totals, figures, stock, packs and costs follow.", CellUse::heading);
    say("An amount on which the theoretical yield depends is not framed: how far the reactions run is not "
        "worked "
        "out here. Change it in the route file and make the workbook anew.");
    if (!yields_live)
        say("Yields are not framed either, and figures keep their value: a step of this route is fed back, "
            "or what "
            "one step leaves is used in another.");
    say("Figures marked \"as written\" need the streams and do not follow.");
    say("");
    for (const writing::Text& item : documents::usual_cautions().items)
        say(plain(item), CellUse::note);
    say(fmt::format("Made by routeweigh {} from the route file and its catalogue.", program_version()),
        CellUse::note);
    return sheet;
}

} // namespace

writing::Workbook route_workbook(const course::ClassUse& use, const course::House& house) {
    using namespace documents;
    const Assessment& assessment = *use.route;
    const BookPlan plan(assessment);
    const Route& route = assessment.route();
    return {fmt::format("{}: {}", route.id, route.title),
            route.product->name,
            "Figures support a decision and replace no risk assessment.",
            {about_sheet(assessment, plan.free_yields), amounts_sheet(plan), steps_sheet(plan),
             totals_sheet(plan), figures_sheet(plan), stock_sheet(plan, use), treatment_sheet(use),
             order_sheet(use), costs_sheet(use, house)}};
}

} // namespace routeweigh
