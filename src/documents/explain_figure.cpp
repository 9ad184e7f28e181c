// SPDX-License-Identifier: MIT
#include "documents/explain_figure.hpp"

#include "documents/cautions.hpp"
#include "documents/explain_hazard.hpp"
#include "documents/number.hpp"
#include "documents/report_view.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"
#include "documents/working.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace routeweigh {
namespace {

using namespace documents;
using writing::MachineList;
using writing::MachineObject;

/// A sentence that both documents and machines read: how the figure follows from what goes in.
struct Explanation {
    std::string formula, numbers;
    std::vector<writing::Block> parts;
    writing::MachineTree terms;
};

MachineObject tree_of(const WorkingSum& sum) {
    MachineList parts;
    for (const Contribution& part : sum.parts)
        parts.emplace_back(
            MachineObject{{"words", part.words}, {"value", part.value}, {"pointer", part.pointer}});
    return {{"name", sum.name},
            {"value", sum.value},
            {"unit", sum.unit},
            {"rule", sum.rule},
            {"parts", std::move(parts)}};
}

Explanation of_metric(const Assessment& route, const Metric& metric) {
    Working working = working_of(route, metric);
    Explanation result{working.formula, working.numbers, {}, {}};
    MachineList terms;
    for (const WorkingSum& sum : working.sums) {
        if (sum.parts.empty())
            result.parts.push_back(
                writing::KeyValueList{{{sum.name, fmt::format("{} {}: {}", sum.text, sum.unit, sum.rule)}}});
        else
            result.parts.push_back(sum_table(route, sum));
        terms.emplace_back(tree_of(sum));
    }
    if (!working.from.empty()) {
        writing::KeyValueList list;
        for (const std::string_view id : working.from) {
            const Metric& source = *all_metrics()[static_cast<std::size_t>(metric_index(id))];
            const double value = route.metric(id);
            list.entries.push_back({std::string(source.name),
                                    {quantity(value, source.decimals, source.unit),
                                     writing::Run(fmt::format(", explained as {}", id))}});
            terms.emplace_back(MachineObject{
                {"name", std::string(id)}, {"value", value}, {"unit", std::string(source.unit)}});
        }
        result.parts.push_back(std::move(list));
    }
    result.terms = std::move(terms);
    return result;
}

Explanation of_same_auxiliaries(const Comparison& comparison, std::size_t index, bool break_even) {
    const Assessment& route = comparison.route(index);
    const Assessment& base = comparison.baseline();
    const Totals &own = route.totals(), &other = base.totals();
    const double moles = auxiliaries_of(route.values(), route.flat()).theory;
    const double base_moles = auxiliaries_of(base.values(), base.flat()).theory;
    const SameAuxiliaries& same = comparison.against_baseline(index).same_auxiliaries;
    if (break_even) {
        const double base_value =
            comparison.against_baseline(comparison.baseline_index()).same_auxiliaries.process_mass_intensity;
        return {"yield \u00D7 process mass intensity, same auxiliaries / that of the baseline",
                fmt::format("{} % \u00D7 {} g/g / {} g/g", digits(100.0 * own.yield),
                            digits(same.process_mass_intensity), digits(base_value)),
                {},
                {}};
    }
    return {"(all inputs \u2212 drown-out and rinse + those of the baseline \u00D7 theoretical moles / "
            "theoretical moles of "
            "the baseline) / isolated product",
            fmt::format("({} \u2212 {} + {} \u00D7 {} mmol / {} mmol) g / {} g", digits(own.inputs, 4),
                        digits(own.drown_out, 4), digits(other.drown_out, 4), digits(1000.0 * moles, 4),
                        digits(1000.0 * base_moles, 4), digits(own.product, 4)),
            {},
            {}};
}

writing::Document page(const Assessment& route, const Figure& figure, Explanation explanation) {
    writing::Document document;
    document.id = "figure";
    document.title = fmt::format("{}: route {}", capitalised(figure.name), route.route().id);
    document.subtitle = route.route().title;
    const bool missing = std::isnan(figure.value);
    writing::KeyValueList list;
    const auto say = [&](std::string key, writing::Text value) {
        if (!value.empty()) list.entries.push_back({std::move(key), std::move(value)});
    };
    const bool open_end = std::isinf(figure.high);
    writing::Run value = quantity(figure.value, figure.decimals, unit_of(figure));
    if (open_end) value.text = ">= " + value.text;
    say("Value", missing ? writing::Text("none: " + figure.note) : writing::Text(value));
    if (!missing && !open_end && figure.high > figure.low)
        say("Between", {quantity(figure.low, figure.decimals, unit_of(figure)), " and ",
                        quantity(figure.high, figure.decimals, unit_of(figure))});
    if (!missing && !figure.note.empty()) say("Note", figure.note);
    if (!explanation.formula.empty()) say("Formula", writing::Text(writing::code(explanation.formula)));
    if (!explanation.numbers.empty() && !missing)
        say("Numbers put in", writing::Text(writing::code(explanation.numbers + " = " + value.text)));
    say("What is counted", figure.boundary);
    say("Defined by", figure.reference);
    say("Numbers of the route", fmt::format("{}. {}", route.route().status, route.route().origin));
    document.blocks.push_back(std::move(list));
    for (writing::Block& block : explanation.parts)
        document.blocks.push_back(std::move(block));
    document.blocks.push_back(usual_cautions());
    document.machine = MachineObject{{"routeweigh", std::string(program_version())},
                                     {"route", route.route().id},
                                     {"figure", figure.id},
                                     {"value", figure.value},
                                     {"unit", figure.unit},
                                     {"low", figure.low},
                                     {"high", figure.high},
                                     {"note", figure.note},
                                     {"formula", explanation.formula},
                                     {"numbers", explanation.numbers},
                                     {"boundary", figure.boundary},
                                     {"reference", figure.reference},
                                     {"terms", std::move(explanation.terms)}};
    return document;
}

Explanation of_hazard(const Assessment& route, std::string_view id) {
    HazardExplanation found = explain_hazard(route, id);
    return {std::move(found.formula), std::move(found.numbers), std::move(found.parts),
            std::move(found.terms)};
}

Explanation explained(const Comparison& comparison, std::size_t index, std::string_view id) {
    const bool break_even = id == "break_even_yield";
    if (break_even || id == pmi_same_auxiliaries) return of_same_auxiliaries(comparison, index, break_even);
    const int metric = metric_index(id);
    return metric >= 0 ? of_metric(comparison.route(index), *all_metrics()[static_cast<std::size_t>(metric)])
                       : of_hazard(comparison.route(index), id);
}

} // namespace

writing::Document explain_figure(const Comparison& comparison, std::size_t route, std::string_view id) {
    return page(comparison.route(route), figure(figures_of(comparison, route), id),
                explained(comparison, route, id));
}

} // namespace routeweigh
