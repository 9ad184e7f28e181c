// SPDX-License-Identifier: MIT
#include "documents/uncertainty_document.hpp"

#include "compare/uncertainty/variance_shares.hpp"
#include "documents/cautions.hpp"
#include "documents/certainty_data.hpp"
#include "documents/certainty_parts.hpp"
#include "documents/number.hpp"
#include "documents/ranks.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace routeweigh {
namespace {

using namespace documents;

/// Inputs listed by name; the rest are summed.
constexpr std::size_t most_inputs = 12;

/// Draws for the shares of the variance: each costs as many evaluations as there are inputs.
constexpr std::size_t share_draws = 8'000;

std::string statement(const Certainty& certainty, const ReportView& view, std::size_t route,
                      std::size_t figure) {
    const DrawnOutput& drawn = certainty.figure(route, figure);
    const Figure& head = certainty.model().heads().list[figure];
    const auto text = [&](double value) { return at_precision(value, drawn.deviation, head.decimals).text; };
    const std::string unit = unit_of(head);
    return fmt::format("{} of {}: {}{}{}, from {} to {} in {} of the draws{}.", head.name,
                       view.routes[route].id, text(drawn.mean), unit.empty() ? "" : " ", unit,
                       text(drawn.low), text(drawn.high), coverage_words(certainty),
                       certainty.model().rests_on_assumed_yield(route, figure) ? ", at the assumed yield"
                                                                               : "");
}

/// Which measurement matters: shares of the variance, by drawing, of the inputs that have one.
writing::Table shares_table(const std::vector<VarianceShares>& all, const Certainty& certainty,
                            const ReportView& view, std::size_t route, std::size_t figure) {
    const VarianceShares& shares = all[certainty.model().output(route, figure)];
    writing::Table table;
    table.caption = fmt::format("Which measurement matters: {} of {}",
                                certainty.model().heads().list[figure].name, view.routes[route].id);
    table.columns = {
        {.heading = "input"},
        {.heading = "alone", .align = writing::Align::decimal, .unit = "% of the variance"},
        {.heading = "with others", .align = writing::Align::decimal, .unit = "% of the variance"}};
    std::vector<std::size_t> order(shares.total.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return shares.total[a] > shares.total[b]; });
    if (order.size() > most_inputs) order.resize(most_inputs);
    for (const std::size_t i : order) {
        if (shares.total[i] < 0.0005) break;
        // What the draws leave open may put one above the other; none is above in truth.
        const double total = std::min(shares.total[i], 1.0), first = std::clamp(shares.first[i], 0.0, total);
        table.rows.push_back({certainty.model().inputs().inputs[i].name,
                              writing::Cell(fixed(100.0 * first, 1), 100.0 * first),
                              writing::Cell(fixed(100.0 * total, 1), 100.0 * total)});
    }
    table.remarks.emplace_back(fmt::format(
        "Alone: what would go if this input were known (first-order index); with others: what would "
        "stay if all else were known (total index). Sampled with {} draws, each share good to a "
        "few per cent.",
        whole(share_draws)));
    return table;
}

void add_figure(const std::vector<VarianceShares>& shares, const Certainty& certainty, const ReportView& view,
                std::size_t figure, std::vector<writing::Block>& blocks) {
    blocks.push_back(writing::Heading{2, certainty.model().heads().list[figure].name});
    for (const RouteView& route : view.routes)
        tell_open_end(*route.assessment, certainty.model().heads().list[figure].id, blocks);
    if (!view.single() && ranks_by(view, figure) == RanksBy::runs) add_ranks(view, figure, blocks);
    for (std::size_t r = 0; r < view.routes.size(); ++r) {
        const DrawnOutput& drawn = certainty.figure(r, figure);
        if (std::isnan(drawn.mean)) {
            blocks.push_back(writing::Paragraph{fmt::format("{} has no value.", view.routes[r].id)});
            continue;
        }
        if (!drawn.varies()) {
            blocks.push_back(
                writing::Paragraph{fmt::format("Nothing that varies touches it in {}.", view.routes[r].id)});
            continue;
        }
        blocks.push_back(writing::Paragraph{statement(certainty, view, r, figure)});
        blocks.push_back(budget_table(certainty, view, r, figure, most_inputs));
        blocks.push_back(shares_table(shares, certainty, view, r, figure));
    }
}

} // namespace

writing::Document uncertainty_document(const Comparison& comparison, const Certainty& certainty,
                                       const std::vector<std::string>& figures) {
    const ReportView view(comparison, &certainty);
    writing::Document document;
    document.id = "uncertainty";
    document.title = view.single() ? fmt::format("Uncertainty of {}", view.baseline().id)
                                   : "Uncertainty of " + counted(view.routes.size(), "route", "routes");
    document.subtitle = view.product().name;
    if (certainty.model().inputs().empty()) {
        document.blocks.push_back(writing::Paragraph{
            "Nothing in these files says how exactly an amount is known. Name the balance and the "
            "cylinder in \"measured_with\", say in \"spread\" what stands behind a \"+/-\", or give "
            "what a class found with --results. --vary-assumed moves assumed yields, --atomic-weights what "
            "molar masses rest on."});
        document.blocks.push_back(usual_cautions());
        document.machine = writing::MachineObject{{"routeweigh", std::string(program_version())},
                                                  {"document", document.id},
                                                  {"baseline", view.baseline().id},
                                                  {"certainty", writing::MachineTree()},
                                                  {"reason", "nothing in these files varies"},
                                                  {"budgets", writing::MachineList()}};
        return document;
    }
    if (figures.empty())
        for (std::size_t r = 0; r < view.routes.size(); ++r)
            document.blocks.push_back(interval_table(certainty, view, r));
    std::vector<VarianceShares> shares;
    if (!figures.empty()) {
        VarianceSharesOptions options;
        options.seed = certainty.options().seed;
        options.threads = certainty.options().threads;
        options.draws = share_draws;
        shares = variance_shares(certainty.model().model(), options);
    }
    writing::MachineList budgets;
    if (figures.empty())
        for (const RouteView& route : view.routes)
            tell_open_end(*route.assessment, "hazard_score", document.blocks);
    for (const std::string& id : figures) {
        const std::size_t figure = certainty.model().heads().index_of(id);
        add_figure(shares, certainty, view, figure, document.blocks);
        for (std::size_t r = 0; r < view.routes.size(); ++r)
            budgets.push_back(budget_tree(view, r, figure, shares));
    }
    if (!figures.empty())
        for (writing::Text& remark : sampling_remarks(certainty))
            document.blocks.push_back(writing::Paragraph{std::move(remark), true});
    for (const RouteView& route : view.routes)
        document.blocks.push_back(numbers_of(*route.assessment));
    document.blocks.push_back(usual_cautions());
    document.machine = writing::MachineObject{{"routeweigh", std::string(program_version())},
                                              {"document", document.id},
                                              {"baseline", view.baseline().id},
                                              {"certainty", certainty_tree(view)},
                                              {"budgets", std::move(budgets)}};
    document.colophon = fmt::format("Made by routeweigh {}.", program_version());
    return document;
}

} // namespace routeweigh
