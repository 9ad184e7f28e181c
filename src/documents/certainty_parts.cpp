// SPDX-License-Identifier: MIT
#include "documents/certainty_parts.hpp"

#include "assess/same_auxiliaries.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace routeweigh::documents {
namespace {

/// Decimals that show two digits of the uncertainty (JCGM 100:2008, 7.2.6).
int decimals_of_deviation(double deviation, int otherwise) {
    if (!(deviation > 0.0)) return otherwise;
    return std::clamp(1 - static_cast<int>(std::floor(std::log10(deviation))), 0, 9);
}

/// Names, each once, of those that had to be stable and are not.
std::vector<std::string> unstable_figures(const Certainty& certainty) {
    const FigureModel& model = certainty.model();
    const std::vector<std::size_t>& asked = certainty.options().asked;
    std::vector<std::string> names;
    for (std::size_t f = 0; f < model.heads().count(); ++f)
        for (std::size_t r = 0; r < model.routes(); ++r) {
            const std::size_t y = model.output(r, f);
            if (certainty.drawn().outputs[y].stable ||
                (!asked.empty() && std::find(asked.begin(), asked.end(), y) == asked.end()))
                continue;
            names.push_back(in_sentence(model.heads().list[f].name));
            break;
        }
    return names;
}

std::string named(std::vector<std::string> names) {
    constexpr std::size_t most = 4;
    if (names.size() > most + 1) {
        const std::size_t rest = names.size() - most;
        names.resize(most);
        names.push_back(counted(rest, "other", "others"));
    }
    return listed(names);
}

writing::Cell deviation_cell(double deviation) {
    return {digits(deviation, 2), deviation};
}

std::vector<std::size_t> by_contribution(const std::vector<double>& parts) {
    std::vector<std::size_t> order(parts.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return std::abs(parts[a]) > std::abs(parts[b]); });
    return order;
}

} // namespace

std::string whole(std::size_t number) {
    std::string text = std::to_string(number);
    for (std::size_t at = text.size(); at > 3 && text.size() > 4;) {
        at -= 3;
        text.insert(at, " ");
    }
    return text;
}

writing::Cell at_precision(double value, double deviation, int otherwise) {
    return {fixed(value, decimals_of_deviation(deviation, otherwise)), value};
}

std::string coverage_words(const Certainty& certainty) {
    return fmt::format("{:.10g}\u00A0%", 100.0 * certainty.options().coverage);
}

std::vector<writing::Text> sampling_remarks(const Certainty& certainty) {
    const MonteCarloResult& drawn = certainty.drawn();
    const MonteCarloOptions& options = certainty.options();
    std::vector<writing::Text> remarks;
    std::string how = fmt::format(
        "{} of the inputs vary, {} draws with the seed {}; the interval holds {} of them, with equal shares "
        "left out on both sides (JCGM 101:2008).",
        certainty.model().inputs().inputs.size(), whole(drawn.draws), options.seed,
        coverage_words(certainty));
    if (drawn.interrupted) how += " The run was stopped early; what had been drawn is shown.";
    if (options.digits > 0 && !drawn.interrupted) {
        const std::vector<std::string> unstable = unstable_figures(certainty);
        const std::string digits = counted(static_cast<std::size_t>(options.digits), "digit", "digits") +
                                   " of its standard uncertainty";
        how += unstable.empty()
                   ? fmt::format(" Mean, uncertainty and interval of every figure{} are stable to {}.",
                                 options.asked.empty() ? "" : " asked for", digits)
                   : fmt::format(" That was too few to be stable to {} for: {}.", digits, named(unstable));
    }
    remarks.emplace_back(how);
    if (!certainty.model().inputs().elements.empty())
        remarks.emplace_back("Atomic weights: standard ones, IUPAC 2021, abridged; each anywhere within its "
                             "stated uncertainty, and the same for every substance and route.");
    if (const double share = drawn.outputs[certainty.model().out_of_range_output()].mean; share > 0.0)
        remarks.emplace_back(fmt::format("In {} of the draws an input reached the end of its physical range "
                                         "and was held there, or more product was isolated than forms.",
                                         percent(share, 2)));
    return remarks;
}

writing::Table interval_table(const Certainty& certainty, const ReportView& view, std::size_t route) {
    const FigureModel& model = certainty.model();
    writing::Table table;
    table.caption = fmt::format("What varies in the figures of {}", view.routes[route].id);
    table.columns = {{.heading = "figure"},
                     {.heading = "as written", .align = decimal},
                     {.heading = "mean", .align = decimal},
                     {.heading = "standard uncertainty", .align = decimal},
                     {.heading = "from", .align = decimal},
                     {.heading = "to", .align = decimal},
                     {.heading = "linear", .align = decimal},
                     {.heading = "most of it from"}};
    for (std::size_t f = 0; f < model.heads().count(); ++f) {
        const std::size_t y = model.output(route, f);
        const DrawnOutput& drawn = certainty.drawn().outputs[y];
        if (!drawn.varies()) continue;
        const Figure& head = model.heads().list[f];
        if (view.single() && head.id == same_auxiliaries_id) continue;
        const double spread = drawn.deviation;
        writing::Cell name(head.unit.empty() ? head.name : fmt::format("{}, {}", head.name, unit_of(head)));
        if (model.rests_on_assumed_yield(route, f))
            name.note = "at the assumed yield; another yield gives another figure";
        const auto& parts = certainty.linear().contribution[y];
        const std::size_t most = by_contribution(parts).front();
        const double linear = certainty.linear().deviation[y];
        std::string from;
        if (linear > 0.0)
            from = fmt::format("{}, {}", model.inputs().inputs[most].name,
                               percent(parts[most] * parts[most] / (linear * linear)));
        table.rows.push_back(
            {std::move(name), at_precision(view.routes[route].value(head.id), spread, head.decimals),
             at_precision(drawn.mean, spread, head.decimals), deviation_cell(spread),
             at_precision(drawn.low, spread, head.decimals), at_precision(drawn.high, spread, head.decimals),
             deviation_cell(linear), std::move(from)});
    }
    table.remarks = sampling_remarks(certainty);
    table.remarks.emplace_back(
        "Linear: standard uncertainty to first order (JCGM 100:2008); most of it from: "
        "the input with the largest share of that variance.");
    return table;
}

writing::Table budget_table(const Certainty& certainty, const ReportView& view, std::size_t route,
                            std::size_t figure, std::size_t most) {
    const FigureModel& model = certainty.model();
    const std::size_t y = model.output(route, figure);
    const Figure& head = model.heads().list[figure];
    const double linear = certainty.linear().deviation[y];
    const auto& parts = certainty.linear().contribution[y];
    const std::string unit = unit_of(head);
    writing::Table table;
    table.caption =
        fmt::format("Uncertainty budget of {}, to first order: {}", view.routes[route].id, head.name);
    table.columns = {{.heading = "input"},
                     {.heading = "distribution"},
                     {.heading = "contribution", .align = decimal, .unit = unit},
                     {.heading = "share of the variance", .align = decimal, .unit = "%"}};
    double rest = 0.0;
    std::size_t shown = 0, left = 0;
    for (const std::size_t i : by_contribution(parts)) {
        if (parts[i] == 0.0) break;
        const double share = parts[i] * parts[i] / (linear * linear);
        if (shown == most) {
            rest += share;
            ++left;
            continue;
        }
        ++shown;
        const UncertainInput& input = model.inputs().inputs[i];
        table.rows.push_back({input.name, input.distribution.name(),
                              writing::Cell(digits(std::abs(parts[i]), 2), parts[i]),
                              writing::Cell(fixed(100.0 * share, 1), 100.0 * share)});
    }
    if (left > 0)
        table.rows.push_back({counted(left, "other", "others"), "",
                              writing::Cell(digits(linear * std::sqrt(rest), 2), linear * std::sqrt(rest)),
                              writing::Cell(fixed(100.0 * rest, 1), 100.0 * rest)});
    table.rows.push_back(writing::Row(
        {"combined standard uncertainty", "", deviation_cell(linear), writing::Cell("100.0", 100.0)},
        writing::RowKind::total));
    if (const double drawn = certainty.drawn().outputs[y].deviation;
        std::abs(drawn - linear) > 0.1 * std::max(drawn, linear))
        table.remarks.emplace_back(fmt::format("By drawing it is {} {}: the figure bends within the spread "
                                               "of its inputs, and the first order sees "
                                               "only the slope. The interval above is that of the draws.",
                                               digits(drawn, 2), unit));
    return table;
}

} // namespace routeweigh::documents
