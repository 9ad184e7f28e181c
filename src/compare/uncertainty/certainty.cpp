// SPDX-License-Identifier: MIT
#include "compare/uncertainty/certainty.hpp"

#include <cmath>
#include <utility>

namespace routeweigh {

Certainty::Certainty(const Comparison& comparison, const UncertaintyOptions& uncertainty,
                     MonteCarloOptions draws, const std::vector<std::string>& figures)
    : model_(comparison, uncertainty), options_(std::move(draws)) {
    for (const std::string& id : figures)
        for (std::size_t route = 0; route < model_.routes(); ++route)
            options_.asked.push_back(model_.output(route, model_.heads().index_of(id)));
    linear_ = propagate_linearly(model_.model());
    std::vector<std::size_t> ranked;
    for (const std::string_view id : figures_of_verdict)
        ranked.push_back(model_.heads().index_of(id));
    for (const std::string& id : figures)
        ranked.push_back(model_.heads().index_of(id));
    OrderCounter counter(model_.heads(), model_.routes(), comparison.baseline_index(), ranked,
                         options_.threads);
    if (model_.inputs().empty()) { // every draw would be the same
        counter.add({1, linear_.value});
        for (const double value : linear_.value)
            drawn_.outputs.push_back({value, 0.0, value, value, true});
    } else {
        MonteCarloOptions options = options_;
        options.each_batch = [&](const DrawBatch& batch) {
            counter.add(batch);
            if (options_.each_batch) options_.each_batch(batch);
        };
        drawn_ = propagate_draws(model_.model(), options);
    }
    orders_ = counter.result();
}

PairVerdict Certainty::verdict(std::size_t route, std::size_t other, std::size_t figure) const {
    const DrawnOutput& ours = this->figure(route, figure);
    const DrawnOutput& theirs = this->figure(other, figure);
    if (std::isnan(ours.mean) || std::isnan(theirs.mean)) return PairVerdict::no_value;
    if (!model_.bounded(route, figure) || !model_.bounded(other, figure)) return PairVerdict::no_bound;
    if (model_.rests_on_assumed_yield(route, figure) || model_.rests_on_assumed_yield(other, figure))
        return PairVerdict::rests_on_assumed;
    if (!ours.varies() && !theirs.varies()) return PairVerdict::exact;
    if (order(figure).share_better(route, other) >= sure_share) return PairVerdict::better;
    if (order(figure).share_better(other, route) >= sure_share) return PairVerdict::worse;
    return PairVerdict::not_distinguishable;
}

bool Certainty::holds_for_plausible_yields(std::size_t route, std::size_t other, std::size_t figure) const {
    const auto [low, high] = model_.within_plausible_yields(route, figure);
    const auto [other_low, other_high] = model_.within_plausible_yields(other, figure);
    return high < other_low || other_high < low;
}

} // namespace routeweigh
