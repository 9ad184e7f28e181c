// SPDX-License-Identifier: MIT
#include "documents/costs_document.hpp"

#include "base/index.hpp"
#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/term_figures.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <utility>

namespace routeweigh {
namespace {

using namespace documents;
using course::ClassUse;
using course::House;
using utilities::Estimate;
using utilities::StageUse;

constexpr double kilojoules_per_watt_hour = 3.6;

std::string range_text(const Estimate& estimate, double factor, int significant = 2) {
    if (estimate.usual == 0.0) return "0";
    const std::string usual = digits(estimate.usual * factor, significant);
    if (estimate.stated) return usual + " (stated)";
    return fmt::format("{} ({} to {})", usual, digits(estimate.low * factor, significant),
                       digits(estimate.high * factor, significant));
}

/// "a; b" of the stages of which the condition holds; empty: of none.
std::string stages_where(const ClassUse& use, bool StageUse::*holds) {
    std::vector<std::string> titles;
    for (const StageUse& stage : use.one.stages)
        if (stage.*holds) {
            const Route& route = use.route->route();
            const Step& step = route.steps[at(stage.step)];
            titles.push_back((route.steps.size() > 1 ? step.id + ": " : "") +
                             step.stages[at(stage.stage)].title);
        }
    return join(titles, "; ");
}

writing::Table stage_table(const ClassUse& use) {
    writing::Table table;
    table.caption = "Stage by stage, one run of each step";
    table.columns = {{.heading = "stage"},
                     {.heading = "time", .align = decimal, .unit = "min"},
                     {.heading = "hood, because of"},
                     {.heading = "heat floor", .align = decimal, .unit = "kJ"},
                     {.heading = "socket", .align = writing::Align::right, .unit = "Wh"},
                     {.heading = "cooling water", .align = writing::Align::right, .unit = "L"},
                     {.heading = "suction water", .align = writing::Align::right, .unit = "L"}};
    const Route& route = use.route->route();
    int step = -1;
    for (const StageUse& stage : use.one.stages) {
        if (stage.step != step && route.steps.size() > 1)
            table.rows.push_back(writing::group(route.steps[at(stage.step)].title));
        step = stage.step;
        const Stage& written = route.steps[at(stage.step)].stages[at(stage.stage)];
        writing::Cell minutes = stage.minutes
                                    ? number_cell(*stage.minutes, 0)
                                    : writing::missing("the route file states no time for this stage");
        table.rows.push_back(
            {written.title, std::move(minutes), stage.hood_because,
             stage.heated ? digits_cell(stage.floor, 2) : writing::Cell(),
             stage.socket.usual > 0.0 ? range_text(stage.socket, 1.0 / kilojoules_per_watt_hour) : "",
             stage.cooling.usual > 0.0 ? range_text(stage.cooling, 1.0) : "",
             stage.suction.usual > 0.0 ? range_text(stage.suction, 1.0) : ""});
    }
    if (const std::string raised = stages_where(use, &StageUse::raised); !raised.empty())
        table.remarks.emplace_back(
            "Power times time gives less than the heat floor, in part or whole, and is raised to it: " +
            raised + ". So much material takes a stronger heater or more time than the stage states.");
    if (const std::string below = stages_where(use, &StageUse::below_floor); !below.empty())
        table.remarks.emplace_back("Warning: the energy that the route file states is less than the heat "
                                   "floor, so one of its numbers is wrong: " +
                                   below + ".");
    return table;
}

/// What the whole draws: a run, the class, a gram.
writing::Table utility_table(const ClassUse& use) {
    writing::Table table;
    table.caption = "Energy and water";
    table.columns = {{.heading = ""},
                     {.heading = "unit"},
                     {.heading = "one run", .align = writing::Align::right},
                     {.heading = "the class", .align = writing::Align::right},
                     {.heading = "per gram of product", .align = writing::Align::right}};
    const double product = use.route->totals().product;
    const auto row = [&](std::string name, std::string unit, const Estimate& estimate, double factor) {
        table.rows.push_back({std::move(name), std::move(unit), range_text(estimate, factor),
                              range_text(estimate, factor * use.runs()),
                              range_text(estimate, factor / product)});
    };
    const auto plain = [&](std::string name, std::string unit, double value) {
        table.rows.push_back({std::move(name), std::move(unit), digits(value, 2),
                              digits(value * use.runs(), 2), digits(value / product, 2)});
    };
    plain("heat floor", "kJ", use.one.floor);
    row("drawn from the socket", "Wh", use.one.socket, 1.0 / kilojoules_per_watt_hour);
    row("cooling water from the tap", "L", use.one.cooling, 1.0);
    plain("or recirculated by a pump", "Wh", use.one.circulation_pump / kilojoules_per_watt_hour);
    row("water of aspirators", "L", use.one.suction, 1.0);
    plain("or a diaphragm pump", "Wh", use.one.diaphragm_pump / kilojoules_per_watt_hour);
    return table;
}

writing::Table money_table(const ClassUse& use, const House& house) {
    writing::Table table;
    table.caption = "Money, in " + house.prices.currency;
    table.columns = {{.heading = ""},
                     {.heading = "the class", .align = decimal},
                     {.heading = "a student", .align = decimal},
                     {.heading = "a gram of product", .align = decimal}};
    // A sum of nothing but what has no price is not 0.
    const auto cell = [](double money, bool priced) {
        return priced ? writing::Cell(fixed(money, 2), money) : writing::missing("not in the price list");
    };
    const auto row = [&](std::string name, double amount, bool priced,
                         writing::RowKind kind = writing::RowKind::plain) {
        table.rows.push_back(
            writing::Row({writing::Cell(std::move(name)), cell(amount, priced),
                          cell(amount / use.runs(), priced), cell(amount / use.product, priced)},
                         kind));
    };
    const bool spare = use.plan.extra > 0.0;
    const bool chemicals = use.money.packs > 0.0 || use.stock.unpriced.empty();
    row("chemicals used up", use.money.used, chemicals);
    row(spare ? "packs bought for it, with the extra" : "packs bought for it", use.money.packs, chemicals);
    row("left in the packs", use.money.packs - use.money.used, chemicals);
    for (const course::Disposal& one : use.money.disposals)
        row(fmt::format("disposal: {} ({} L)", one.container, digits(one.millilitres / 1000)), one.cost(),
            one.price.has_value());
    row("electricity", use.money.power, house.prices.electricity.has_value());
    row("water", use.money.water, house.prices.water.has_value());
    const auto sum = [&](std::string name, double amount) {
        row(std::move(name), amount, amount > 0.0 || use.money.unpriced.empty(), writing::RowKind::total);
    };
    sum("used up, disposal, electricity, water", use.money.consumed());
    sum("spent when every pack is bought", use.money.spent());
    if (!use.stock.waste.needs.empty())
        table.remarks.emplace_back("Chemicals include what the waste plan asks to have at hand.");
    if (!use.money.unpriced.empty())
        table.remarks.emplace_back(
            "Not in the price list and counted as nothing: " + join(use.money.unpriced, "; ") + ".");
    return table;
}

writing::Paragraph time_paragraph(const ClassUse& use) {
    const double session = use.plan.session;
    std::string words = fmt::format("The stages take {} min, {} of them in a hood.",
                                    fixed(use.one.minutes, 0), fixed(use.one.hood_minutes, 0));
    if (use.one.silent_stages > 0)
        words += fmt::format(
            " {} state no time and are not counted.",
            capitalised(counted(static_cast<std::size_t>(use.one.silent_stages), "stage", "stages")));
    if (session > 0.0) {
        const double left = session - use.one.minutes;
        words +=
            left >= 0.0
                ? fmt::format(" A session of {} min leaves {} min for the talk, setting up and cleaning.",
                              fixed(session, 0), fixed(left, 0))
                : fmt::format(" It does not fit a session of {} min: {} min are lacking.", fixed(session, 0),
                              fixed(-left, 0));
    }
    return {words};
}

writing::KeyValueList assumptions(const House& house) {
    writing::KeyValueList list;
    for (const auto& [name, words] : house.utilities.assumptions())
        list.entries.push_back({name, words});
    return list;
}

writing::MachineTree estimate_tree(const Estimate& estimate, double factor, const char* unit) {
    return writing::MachineObject{{"usual", estimate.usual * factor},
                                  {"low", estimate.low * factor},
                                  {"high", estimate.high * factor},
                                  {"unit", unit},
                                  {"stated", estimate.stated}};
}

writing::MachineObject costs_tree(const ClassUse& use, const House& house) {
    const double session = use.plan.session;
    const Route& route = use.route->route();
    writing::MachineList stages, figures, disposals;
    for (const StageUse& stage : use.one.stages)
        stages.emplace_back(writing::MachineObject{
            {"step", route.steps[at(stage.step)].id},
            {"stage", route.steps[at(stage.step)].stages[at(stage.stage)].title},
            {"minutes", stage.minutes ? writing::MachineTree(*stage.minutes) : writing::MachineTree()},
            {"hood_because", stage.hood_because},
            {"heat_floor_kJ", stage.floor},
            {"socket", estimate_tree(stage.socket, 1.0 / kilojoules_per_watt_hour, "Wh")},
            {"cooling", estimate_tree(stage.cooling, 1.0, "L")},
            {"suction", estimate_tree(stage.suction, 1.0, "L")}});
    for (const TermFigure& figure : term_figures())
        if (figure.money && is_shown(figure, use.plan, house.prices))
            figures.push_back(machine_of(figure_of(figure, use, house.prices), Edition::key));
    for (const course::Disposal& one : use.money.disposals)
        disposals.emplace_back(writing::MachineObject{
            {"container", one.container},
            {"millilitres", one.millilitres},
            {"price_per_L", one.price ? writing::MachineTree(*one.price) : writing::MachineTree()},
            {"cost", one.price ? writing::MachineTree(one.cost()) : writing::MachineTree()}});
    return {{"routeweigh", std::string(program_version())},
            {"route", route.id},
            {"sections", use.plan.sections},
            {"students", use.plan.students},
            {"extra", use.plan.extra},
            {"session_minutes", session > 0.0 ? writing::MachineTree(session) : writing::MachineTree()},
            {"minutes", use.one.minutes},
            {"hood_minutes", use.one.hood_minutes},
            {"silent_stages", use.one.silent_stages},
            {"stages", std::move(stages)},
            {"figures_of_class", std::move(figures)},
            {"currency", house.prices.currency},
            {"used", use.money.used},
            {"disposal", use.money.disposal()},
            {"disposal_by_container", std::move(disposals)},
            {"power", use.money.power},
            {"water", use.money.water},
            {"spent", use.money.spent()},
            {"unpriced", writing::text_list(use.money.unpriced)},
            {"prices", house.prices.words()}};
}

} // namespace

writing::Document costs_document(const ClassUse& use, const House& house) {
    const Route& route = use.route->route();
    writing::Document document;
    document.id = "costs";
    document.title = fmt::format("Time, energy, water and money: {}", route.id);
    document.subtitle = fmt::format(
        "{}; {} of {}, {:g} % spare stock", route.title,
        counted(static_cast<std::size_t>(use.plan.sections), "section", "sections"),
        counted(static_cast<std::size_t>(use.plan.students), "student", "students"), 100.0 * use.plan.extra);
    auto& blocks = document.blocks;
    blocks.push_back(writing::Heading{2, "Time"});
    blocks.push_back(time_paragraph(use));
    blocks.push_back(stage_table(use));
    blocks.push_back(writing::Heading{2, "Energy and water"});
    blocks.push_back(utility_table(use));
    blocks.push_back(writing::Paragraph{
        "The heat floor is what the materials and their glass must take up; the socket is average power "
        "times time. "
        "The range is what single appliances differ by; a stage that states its energy or cooling water in "
        "the route "
        "file overrides the estimate. Hoods run whether or not a class is held and are left out.",
        true});
    if (!house.prices.packs.empty()) {
        blocks.push_back(writing::Heading{2, "Money"});
        blocks.push_back(money_table(use, house));
        blocks.push_back(writing::Paragraph{capitalised(house.prices.words()) + ".", true});
        if (const std::string extra = extra_words(use.plan); !extra.empty())
            blocks.push_back(writing::Paragraph{extra, true});
    }
    blocks.push_back(writing::Folded{"Assumptions behind the estimates", {assumptions(house)}});
    blocks.push_back(usual_cautions());
    document.machine = costs_tree(use, house);
    document.colophon = fmt::format("Made by routeweigh {}.", program_version());
    return document;
}

} // namespace routeweigh
