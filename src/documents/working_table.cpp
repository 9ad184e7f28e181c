// SPDX-License-Identifier: MIT
// The tables behind a working: parts of a total, how inputs are counted, the net equation.
#include "assess/input_class.hpp"
#include "base/index.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"
#include "documents/working.hpp"
#include "route/route_checks.hpp"

#include <fmt/format.h>

#include <string_view>
#include <utility>

namespace routeweigh::documents {
namespace {

std::string_view input_words(InputClass input) {
    switch (input) {
    case InputClass::reactant:
        return "reactant";
    case InputClass::water:
        return "water";
    case InputClass::solvent:
        return "solvent";
    case InputClass::aid:
        break;
    }
    return "aid";
}

std::string_view phase_words(Phase phase) {
    switch (phase) {
    case Phase::reaction:
        return "reaction";
    case Phase::workup:
        return "work-up";
    case Phase::purification:
        break;
    }
    return "purification";
}

} // namespace

writing::Table sum_table(const Assessment& route, const WorkingSum& sum) {
    writing::Table table;
    table.caption = capitalised(sum.name) + ", route " + route.route().id;
    table.columns = {{.heading = "part"},
                     {.heading = "amount", .align = writing::Align::decimal, .unit = sum.unit},
                     {.heading = "place in the route file"}};
    std::string file;
    for (std::size_t i = 0; i < sum.parts.size(); ++i) {
        const Contribution& part = sum.parts[i];
        std::string place = part.pointer;
        if (!part.pointer.empty()) {
            const Place found = place_of(route.route(), part.pointer);
            if (found.line > 0) place = fmt::format("line {}, {}", found.line, part.pointer);
            file = found.source;
        }
        table.rows.push_back({part.words, writing::Cell(sum.part_texts[i], part.value), place});
    }
    table.rows.push_back(
        writing::Row({sum.name, writing::Cell(sum.text, sum.value), ""}, writing::RowKind::total));
    if (!file.empty()) table.remarks.push_back(writing::Text{"Lines of ", writing::code(file)});
    return table;
}

writing::Table counted_inputs_table(const Assessment& route) {
    writing::Table table;
    table.caption = "How every input of " + route.route().id + " is counted, one run";
    table.columns = {{.heading = "input"},
                     {.heading = "mass", .align = decimal, .unit = "g"},
                     {.heading = "counts as"},
                     {.heading = "stage"},
                     {.heading = "place in the route file"}};
    const auto inflows = route.flat().inflows();
    const Evaluation& evaluation = route.evaluation();
    for (std::size_t i = 0; i < inflows.size(); ++i) {
        const Inflow& inflow = inflows[i];
        if (inflow.fed_by >= 0) continue;
        const Stage& stage = route.route().steps[at(inflow.step)].stages[at(inflow.stage)];
        const Charge& charge = stage.charges[at(inflow.charge)];
        std::string name = fmt::format("{}: {}", charge.role->name, inflow.substance->name);
        if (!inflow.neat) name += " in " + charge.material->name;
        std::string counted(input_words(input_class(inflow)));
        if (inflow.role->drown_out) counted += ", drown-out";
        if (route.rules().benign.contains(inflow.substance)) counted += ", benign";
        if (evaluation.credit[i] > 0.0)
            counted += fmt::format(", {} g of it fed back", digits(evaluation.credit[i]));
        table.rows.push_back({std::move(name), digits_cell(evaluation.in[i], 4), counted,
                              std::string(phase_words(stage.phase)), charge.pointer});
    }
    table.rows.push_back(
        writing::Row({"every input", digits_cell(route.totals().inputs_gross, 4)}, writing::RowKind::total));
    return table;
}

writing::Table net_equation_table(const Assessment& route) {
    const NetEquation& net = route.compiled().net();
    writing::Table table;
    table.caption = "Net equation of " + route.route().id + ", per mol of product";
    table.columns = {{.heading = "substance"},
                     {.heading = "amount", .align = decimal, .unit = "mol"},
                     {.heading = "molar mass", .align = decimal, .unit = "g/mol"},
                     {.heading = "mass", .align = decimal, .unit = "g"}};
    const auto add = [&](const char* heading, const std::vector<NetEquation::Part>& parts) {
        if (parts.empty()) return;
        table.rows.push_back(writing::group(heading));
        for (const NetEquation::Part& part : parts) {
            const double grams = part.moles * part.substance->molar_mass;
            table.rows.push_back(
                {part.substance->name, writing::Cell(fmt::format("{:.4g}", part.moles), part.moles),
                 writing::Cell(fixed(part.substance->molar_mass, 2), part.substance->molar_mass),
                 writing::Cell(fixed(grams, 2), grams)});
        }
    };
    add("taken", net.inputs);
    const Substance& product = *route.route().product;
    add("left: the product", {{&product, 1.0}});
    add("left: by-products", net.outputs);
    return table;
}

} // namespace routeweigh::documents
