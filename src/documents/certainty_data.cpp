// SPDX-License-Identifier: MIT
#include "documents/certainty_data.hpp"

#include "documents/ranks.hpp"
#include "documents/weighting_view.hpp"

#include <optional>
#include <utility>

namespace routeweigh::documents {
namespace {

using writing::MachineList;
using writing::MachineObject;
using writing::MachineTree;

/// Of each rank, the share of the draws; null where ranks would rest on nothing.
MachineTree rank_shares(const ReportView& view, std::size_t route, std::size_t figure) {
    const FigureOrder& order = view.certainty->order(figure);
    if (view.single() || !order.ranked || ranks_by(view, figure) != RanksBy::runs) return {};
    MachineList shares;
    for (std::size_t rank = 0; rank < view.routes.size(); ++rank)
        shares.emplace_back(order.share_at_rank(route, rank));
    return shares;
}

MachineTree share_better(const ReportView& view, std::size_t route, std::size_t figure) {
    if (route == view.baseline_index) return {};
    switch (view.certainty->verdict(route, view.baseline_index, figure)) {
    case PairVerdict::better:
    case PairVerdict::worse:
    case PairVerdict::not_distinguishable:
        return view.certainty->order(figure).share_better(route, view.baseline_index);
    case PairVerdict::exact:
    case PairVerdict::rests_on_assumed:
    case PairVerdict::no_bound:
    case PairVerdict::no_value:
        break;
    }
    return {};
}

MachineTree figure_tree(const ReportView& view, std::size_t route, std::size_t figure) {
    const Certainty& certainty = *view.certainty;
    const FigureModel& model = certainty.model();
    const DrawnOutput& drawn = certainty.figure(route, figure);
    return MachineObject{
        {"id", model.heads().list[figure].id},
        {"mean", drawn.mean},
        {"standard_uncertainty", drawn.deviation},
        {"low", drawn.low},
        {"high", drawn.high},
        {"bounded_above", model.bounded(route, figure)},
        {"linear_standard_uncertainty", certainty.linear().deviation[model.output(route, figure)]},
        {"rests_on_assumed_yield", model.rests_on_assumed_yield(route, figure)},
        {"better_than_baseline", share_better(view, route, figure)},
        {"at_rank", rank_shares(view, route, figure)}};
}

} // namespace

MachineTree certainty_tree(const ReportView& view) {
    const Certainty& certainty = *view.certainty;
    const FigureModel& model = certainty.model();
    MachineList inputs, routes;
    for (const UncertainInput& input : model.inputs().inputs)
        inputs.emplace_back(MachineObject{{"name", input.name},
                                          {"distribution", std::string(input.distribution.name())},
                                          {"mean", input.distribution.mean()},
                                          {"standard_deviation", input.distribution.deviation()}});
    std::optional<WeightingView> weightings;
    if (!view.single()) weightings.emplace(view);
    for (std::size_t r = 0; r < view.routes.size(); ++r) {
        MachineList figures;
        for (std::size_t f = 0; f < model.heads().count(); ++f)
            figures.push_back(figure_tree(view, r, f));
        MachineObject route{{"id", view.routes[r].id}, {"figures", std::move(figures)}};
        if (weightings)
            route.push_back({"weightings", MachineObject{{"first", weightings->first[r]},
                                                         {"below_baseline", weightings->below_baseline[r]},
                                                         {"best_lead", weightings->best_lead[r]}}});
        routes.emplace_back(std::move(route));
    }
    return MachineObject{{"draws", static_cast<std::int64_t>(certainty.drawn().draws)},
                         {"seed", static_cast<std::int64_t>(certainty.options().seed)},
                         {"coverage", certainty.options().coverage},
                         {"interrupted", certainty.drawn().interrupted},
                         {"inputs", std::move(inputs)},
                         {"routes", std::move(routes)}};
}

MachineTree budget_tree(const ReportView& view, std::size_t route, std::size_t figure,
                        const std::vector<VarianceShares>& shares) {
    const FigureModel& model = view.certainty->model();
    const std::size_t y = model.output(route, figure);
    MachineList inputs;
    for (std::size_t i = 0; i < model.inputs().inputs.size(); ++i)
        inputs.emplace_back(
            MachineObject{{"input", model.inputs().inputs[i].name},
                          {"linear_contribution", view.certainty->linear().contribution[y][i]},
                          {"first_order_share", shares[y].first[i]},
                          {"total_share", shares[y].total[i]}});
    return MachineObject{{"route", view.routes[route].id},
                         {"figure", model.heads().list[figure].id},
                         {"inputs", std::move(inputs)}};
}

} // namespace routeweigh::documents
