// SPDX-License-Identifier: MIT
#include "compare/uncertainty/figure_model.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

constexpr double rounding = 1e-12; ///< relative: less than this is no change

/// The figures of all routes from their inputs; keeps what an evaluation needs, so that it does not allocate.
class Evaluator {
  public:
    Evaluator(std::vector<const Assessment*> routes, std::size_t baseline, std::size_t figures)
        : routes_(std::move(routes)), baseline_(baseline), figures_(figures), values_(routes_.size()) {}

    /// \return false where more product is isolated than forms
    bool evaluate(std::size_t route, const Inputs& inputs, std::span<double> y) {
        const Assessment& assessment = *routes_[route];
        RouteFigures::Values& values = values_[route];
        assessment.compiled().evaluate(inputs, values);
        double* out = y.data() + route * figures_;
        out = std::copy(values.metrics.begin(), values.metrics.end(), out);
        const HazardScheme& scheme = assessment.rules().hazard.score;
        for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
            for (std::size_t p = 0; p < place_count; ++p)
                if (scheme.places[p].scored)
                    *out++ = values.hazard.value[cell_index(e, static_cast<HazardPlace>(p))];
        *out++ = values.score.value;
        return std::all_of(
            values.evaluation.steps.begin(), values.evaluation.steps.end(),
            [](const StepResult& step) { return step.isolated <= step.made * (1.0 + rounding); });
    }

    /// The last figure of every route, which needs the baseline. Call it when all routes have been evaluated.
    void same_auxiliaries(std::span<double> y) const {
        for (std::size_t r = 0; r < routes_.size(); ++r)
            y[(r + 1) * figures_ - 1] = intensity_with_same_auxiliaries(
                {values_[r].evaluation, values_[r].totals, routes_[r]->flat().final_step()},
                {values_[baseline_].evaluation, values_[baseline_].totals,
                 routes_[baseline_]->flat().final_step()});
    }

  private:
    std::vector<const Assessment*> routes_;
    std::size_t baseline_, figures_;
    std::vector<RouteFigures::Values> values_;
};

} // namespace

std::size_t FigureHeads::index_of(std::string_view id) const {
    return static_cast<std::size_t>(
        std::find_if(list.begin(), list.end(), [&](const Figure& figure) { return figure.id == id; }) -
        list.begin());
}

FigureModel::FigureModel(const Comparison& comparison, const UncertaintyOptions& options)
    : comparison_(&comparison) {
    for (const auto& route : comparison.routes())
        routes_.push_back(route.get());
    heads_.list = comparison.baseline().figures();
    Figure same = heads_.list[heads_.index_of("process_mass_intensity")];
    same.id = "same_auxiliaries_process_mass_intensity";
    same.name = "Process mass intensity, same auxiliaries";
    heads_.list.push_back(same);
    inputs_ = uncertain_inputs(routes_, options);

    model_.inputs = inputs_.inputs;
    model_.outputs = routes_.size() * heads_.count() + 1;
    model_.evaluator = [this] {
        return [this, evaluator = Evaluator(routes_, comparison_->baseline_index(), heads_.count()),
                inputs = Inputs{}](std::span<const double> x, std::span<double> y) mutable {
            bool out_of_range = false;
            for (std::size_t r = 0; r < routes_.size(); ++r) {
                const FlatRoute& flat = routes_[r]->flat();
                out_of_range = apply(inputs_.effects[r], flat.nominal(), x, flat, inputs) > 0 || out_of_range;
                out_of_range = !evaluator.evaluate(r, inputs, y) || out_of_range;
            }
            evaluator.same_auxiliaries(y);
            y[out_of_range_output()] = out_of_range ? 1.0 : 0.0;
        };
    };
    vary_assumed_yields();
}

void FigureModel::vary_assumed_yields() {
    Evaluator evaluator(routes_, comparison_->baseline_index(), heads_.count());
    std::vector<double> nominal(model_.outputs), varied(model_.outputs);
    const auto evaluate_all = [&](double points, bool of_baseline_only, std::vector<double>& y) {
        for (std::size_t r = 0; r < routes_.size(); ++r) {
            Inputs inputs = routes_[r]->flat().nominal();
            if (!of_baseline_only || r == comparison_->baseline_index())
                for (const int step : inputs_.assumed_steps[r]) {
                    double& isolated = inputs.isolated[at(step)];
                    // A mass is moved by so many points of its own.
                    isolated = routes_[r]->flat().steps()[at(step)].isolated_is_mass
                                   ? isolated * (1.0 + points)
                                   : std::clamp(isolated + points, 0.01, 1.0);
                }
            evaluator.evaluate(r, inputs, y);
        }
        evaluator.same_auxiliaries(y);
    };
    evaluate_all(0.0, false, nominal);
    assumed_.resize(model_.outputs);
    for (std::size_t y = 0; y < model_.outputs; ++y)
        assumed_[y].ends = {nominal[y], nominal[y]};
    for (const double points : {-plausible_yield_difference, plausible_yield_difference})
        for (const bool of_baseline_only : {false, true}) {
            evaluate_all(points, of_baseline_only, varied);
            for (std::size_t y = 0; y < model_.outputs; ++y) {
                OfAssumedYield& entry = assumed_[y];
                entry.rests =
                    entry.rests || std::abs(varied[y] - nominal[y]) > rounding * std::abs(nominal[y]);
                if (std::isnan(varied[y])) continue;
                entry.ends = {std::min(entry.ends.first, varied[y]), std::max(entry.ends.second, varied[y])};
            }
        }
}

} // namespace routeweigh
