// SPDX-License-Identifier: MIT
// The figures of several routes as functions of everything uncertain in their inputs.
#pragma once

#include "compare/comparison.hpp"
#include "compare/uncertainty/uncertain_inputs.hpp"

#include <string_view>

namespace routeweigh {

/// Which figures are functions of the inputs: those of Assessment::figures(), and the mass intensity with the
/// same auxiliaries. The same list for every route.
struct FigureHeads {
    std::vector<Figure> list; ///< as the baseline has them, for names, units and what is better

    std::size_t count() const { return list.size(); }
    /// \return count() where no figure has the id
    std::size_t index_of(std::string_view id) const;
};

class FigureModel {
  public:
    /// The comparison must outlive the model. \throws InputError see uncertain_inputs()
    FigureModel(const Comparison& comparison, const UncertaintyOptions& options);
    FigureModel(const FigureModel&) = delete; // the evaluator of the model knows its address
    FigureModel& operator=(const FigureModel&) = delete;

    const FigureHeads& heads() const { return heads_; }
    const UncertainInputs& inputs() const { return inputs_; }
    std::size_t routes() const { return routes_.size(); }

    /// Outputs: the figures of the first route, of the second, ..., and a last one that is 1 where an input
    /// had to be held at the end of its physical range or more product was isolated than forms.
    const Model& model() const { return model_; }
    /// All outputs with every input at its mean.
    std::vector<double> nominal() const { return model_.evaluate(model_.evaluator(), model_.means()); }
    std::size_t output(std::size_t route, std::size_t figure) const {
        return route * heads_.count() + figure;
    }
    std::size_t out_of_range_output() const { return routes_.size() * heads_.count(); }

    /// False for a hazard score that has a lowest value only.
    bool bounded(std::size_t route, std::size_t figure) const {
        return heads_.list[figure].id != "hazard_score" || routes_[route]->scores().nominal.ranked();
    }
    /// The figure of the route would be another with another assumed yield.
    bool rests_on_assumed_yield(std::size_t route, std::size_t figure) const {
        return assumed_[output(route, figure)].rests;
    }
    /// Ends of the figure when the overall yield moves by plausible_yield_difference either way, where it is
    /// assumed.
    std::pair<double, double> within_plausible_yields(std::size_t route, std::size_t figure) const {
        return assumed_[output(route, figure)].ends;
    }

  private:
    struct OfAssumedYield {
        bool rests = false;
        std::pair<double, double> ends{};
    };
    void vary_assumed_yields();

    const Comparison* comparison_;
    std::vector<const Assessment*> routes_;
    FigureHeads heads_;
    UncertainInputs inputs_;
    Model model_;
    std::vector<OfAssumedYield> assumed_; ///< by output
};

} // namespace routeweigh
