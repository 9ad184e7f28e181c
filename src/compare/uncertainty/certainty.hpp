// SPDX-License-Identifier: MIT
// How sure one may be of a comparison: every figure with its uncertainty both ways, and how often which route
// is ahead.
#pragma once

#include "assess/same_auxiliaries.hpp"
#include "compare/uncertainty/linear.hpp"
#include "compare/uncertainty/order.hpp"

#include <array>
#include <string_view>

namespace routeweigh {

/// What may be said of one figure of two routes.
enum class PairVerdict {
    exact,               ///< nothing that varies touches it: the order is that of the values
    better,              ///< the first is better in at least `sure_share` of the runs
    worse,               ///< the second is
    not_distinguishable, ///< neither
    rests_on_assumed,    ///< on an assumed yield: no share of runs means anything
    no_bound,            ///< nothing bounds the figure of one of them from above
    no_value
};

/// The figures a verdict is asked of most; their ranks are counted whatever else is asked.
inline constexpr std::array<std::string_view, 5> figures_of_verdict{
    "yield", "complete_e_factor", "process_mass_intensity", same_auxiliaries_id, "hazard_score"};

/// Share of runs from which an order is called sure; common practice, no source.
inline constexpr double sure_share = 0.95;

class Certainty {
  public:
    /// Runs the draws. The comparison must outlive the result. \param figures  ids of those that must be
    /// stable where digits are asked for (none: all), and that are ranked beside those of every verdict
    /// \throws InputError see uncertain_inputs()
    Certainty(const Comparison& comparison, const UncertaintyOptions& uncertainty, MonteCarloOptions draws,
              const std::vector<std::string>& figures = {});
    Certainty(const Certainty&) = delete;
    Certainty& operator=(const Certainty&) = delete;

    const FigureModel& model() const { return model_; }
    const LinearResult& linear() const { return linear_; }
    const MonteCarloResult& drawn() const { return drawn_; }
    const MonteCarloOptions& options() const { return options_; }

    const DrawnOutput& figure(std::size_t route, std::size_t figure) const {
        return drawn_.outputs[model_.output(route, figure)];
    }
    /// By figure.
    const FigureOrder& order(std::size_t figure) const { return orders_[figure]; }

    /// \pre one of the two is the baseline, or the figure is ranked
    PairVerdict verdict(std::size_t route, std::size_t other, std::size_t figure) const;
    /// Where the figure rests on assumed yields: true when moving each by plausible_yield_difference cannot
    /// turn the order of the two.
    bool holds_for_plausible_yields(std::size_t route, std::size_t other, std::size_t figure) const;

  private:
    FigureModel model_;
    MonteCarloOptions options_;
    LinearResult linear_;
    MonteCarloResult drawn_;
    std::vector<FigureOrder> orders_;
};

} // namespace routeweigh
