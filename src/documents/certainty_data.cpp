// SPDX-License-Identifier: MIT
#include "documents/certainty_data.hpp"

namespace routeweigh::documents {
namespace {

using writing::MachineList;
using writing::MachineObject;
using writing::MachineTree;

MachineTree figure_tree(const Comparison& comparison, const Certainty& certainty, std::size_t route,
                        std::size_t figure) {
    const FigureModel& model = certainty.model();
    const DrawnOutput& drawn = certainty.figure(route, figure);
    const std::size_t base = comparison.baseline_index();
    MachineTree better;
    if (route != base) switch (certainty.verdict(route, base, figure)) {
        case PairVerdict::better:
        case PairVerdict::worse:
        case PairVerdict::not_distinguishable:
            better = certainty.order(figure).share_better(route, base);
            break;
        case PairVerdict::exact:
        case PairVerdict::rests_on_assumed:
        case PairVerdict::no_value:
            break;
        }
    return MachineObject{
        {"id", model.heads().list[figure].id},
        {"mean", drawn.mean},
        {"standard_uncertainty", drawn.deviation},
        {"low", drawn.low},
        {"high", drawn.high},
        {"linear_standard_uncertainty", certainty.linear().deviation[model.output(route, figure)]},
        {"rests_on_assumed_yield", model.rests_on_assumed_yield(route, figure)},
        {"better_than_baseline", std::move(better)}};
}

} // namespace

MachineTree certainty_tree(const Comparison& comparison, const Certainty& certainty) {
    const FigureModel& model = certainty.model();
    MachineList inputs, routes;
    for (const UncertainInput& input : model.inputs().inputs)
        inputs.emplace_back(MachineObject{{"name", input.name},
                                          {"distribution", std::string(input.distribution.name())},
                                          {"mean", input.distribution.mean()},
                                          {"standard_deviation", input.distribution.deviation()}});
    for (std::size_t r = 0; r < comparison.routes().size(); ++r) {
        MachineList figures;
        for (std::size_t f = 0; f < model.heads().count(); ++f)
            figures.push_back(figure_tree(comparison, certainty, r, f));
        routes.emplace_back(
            MachineObject{{"id", comparison.route(r).route().id}, {"figures", std::move(figures)}});
    }
    return MachineObject{{"draws", static_cast<std::int64_t>(certainty.drawn().draws)},
                         {"seed", static_cast<std::int64_t>(certainty.options().seed)},
                         {"coverage", certainty.options().coverage},
                         {"interrupted", certainty.drawn().interrupted},
                         {"inputs", std::move(inputs)},
                         {"routes", std::move(routes)}};
}

} // namespace routeweigh::documents
