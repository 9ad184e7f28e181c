// SPDX-License-Identifier: MIT
#include "compare/uncertainty/figure_model.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace routeweigh {
namespace {

constexpr double rounding = 1e-12; ///< relative: less than this is no change

/// The figures of all routes from their inputs; keeps what an evaluation needs, so that it does not allocate.
class Evaluator {
  public:
    Evaluator(std::vector<const Assessment*> routes, std::size_t baseline, std::size_t figures)
        : routes_(std::move(routes)), baseline_(baseline), figures_(figures) {}

    /// All figures of one route but the last, which needs the baseline.
    /// \return false where more product is isolated than forms
    bool evaluate(std::size_t route, const Inputs& inputs, std::span<double> y, Auxiliaries& auxiliaries) {
        const Assessment& assessment = *routes_[route];
        assessment.compiled().evaluate(inputs, values_);
        auxiliaries = auxiliaries_of(values_, assessment.flat());
        double* out = y.data() + route * figures_;
        out = std::copy(values_.metrics.begin(), values_.metrics.end(), out);
        const HazardScheme& scheme = assessment.rules().hazard.score;
        for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
            for (std::size_t p = 0; p < place_count; ++p)
                if (scheme.places[p].scored)
                    *out++ = values_.hazard.value[cell_index(e, static_cast<HazardPlace>(p))];
        *out++ = values_.score.value;
        return std::all_of(
            values_.evaluation.steps.begin(), values_.evaluation.steps.end(),
            [](const StepResult& step) { return step.isolated <= step.made * (1.0 + rounding); });
    }

    /// The last figure of every route.
    void same_auxiliaries(std::span<const Auxiliaries> by_route, std::span<double> y) const {
        for (std::size_t r = 0; r < routes_.size(); ++r)
            y[(r + 1) * figures_ - 1] = intensity_with_same_auxiliaries(by_route[r], by_route[baseline_]);
    }

  private:
    std::vector<const Assessment*> routes_;
    std::size_t baseline_, figures_;
    RouteFigures::Values values_;
};

enum class PlausibleYield { least, most };

/// Moves the overall yield to that end of what is plausible, all steps whose yield is assumed by the same
/// ratio.
void move_yields(const Assessment& route, const std::vector<int>& assumed, PlausibleYield end,
                 Inputs& inputs) {
    const FlatRoute& flat = route.flat();
    std::vector<double> yields;
    for (const StepResult& step : route.evaluation().steps)
        yields.push_back(step.isolated / step.theory);
    std::vector<int> along; // where steps feed each other in a circle, each is moved by itself
    if (!flat.scale_plan().has_loop())
        for (const int step : flat.scale_plan().longest_sequence(yields))
            if (std::find(assumed.begin(), assumed.end(), step) != assumed.end()) along.push_back(step);
    const auto ratio = [&](double yield) {
        const auto [least, most] = plausible_yields(yield);
        return (end == PlausibleYield::least ? least : most) / yield;
    };
    for (const int step : assumed) {
        const double factor =
            along.empty() ? ratio(yields[at(step)])
                          : std::pow(ratio(route.totals().yield), 1.0 / static_cast<double>(along.size()));
        double& isolated = inputs.isolated[at(step)];
        isolated *= factor;
        if (!flat.steps()[at(step)].isolated_is_mass) isolated = std::min(isolated, 1.0);
    }
}

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
                inputs = Inputs{},
                auxiliaries = std::vector<Auxiliaries>{}](const DrawRows& x, DrawRows& y) mutable {
            const std::size_t draws = x.rows, count = routes_.size(), held = out_of_range_output();
            auxiliaries.resize(draws * count);
            for (std::size_t d = 0; d < draws; ++d)
                y.row(d)[held] = 0.0;
            for (std::size_t r = 0; r < count; ++r) {
                const FlatRoute& flat = routes_[r]->flat();
                for (std::size_t d = 0; d < draws; ++d) {
                    const bool fits = apply(inputs_.effects[r], flat.nominal(), x.row(d), flat, inputs) == 0;
                    const bool forms = evaluator.evaluate(r, inputs, y.row(d), auxiliaries[d * count + r]);
                    if (!fits || !forms) y.row(d)[held] = 1.0;
                }
            }
            for (std::size_t d = 0; d < draws; ++d) {
                evaluator.same_auxiliaries(std::span(auxiliaries).subspan(d * count, count), y.row(d));
                for (std::size_t e = 0; e < inputs_.elements.size(); ++e) {
                    const double off = x.row(d)[inputs_.first_element + e];
                    for (std::size_t o = 0; o < held; ++o)
                        y.row(d)[o] += inputs_.elements[e].slope[o] * off;
                }
            }
        };
    };
    vary_assumed_yields();
}

void FigureModel::vary_assumed_yields() {
    Evaluator evaluator(routes_, comparison_->baseline_index(), heads_.count());
    std::vector<double> nominal(model_.outputs), varied(model_.outputs);
    std::vector<Auxiliaries> auxiliaries(routes_.size());
    const auto evaluate_all = [&](std::optional<PlausibleYield> end, bool of_baseline_only,
                                  std::vector<double>& y) {
        for (std::size_t r = 0; r < routes_.size(); ++r) {
            Inputs inputs = routes_[r]->flat().nominal();
            if (end && (!of_baseline_only || r == comparison_->baseline_index()))
                move_yields(*routes_[r], inputs_.assumed_steps[r], *end, inputs);
            evaluator.evaluate(r, inputs, y, auxiliaries[r]);
        }
        evaluator.same_auxiliaries(auxiliaries, y);
    };
    evaluate_all({}, false, nominal);
    assumed_.resize(model_.outputs);
    for (std::size_t y = 0; y < model_.outputs; ++y)
        assumed_[y].ends = {nominal[y], nominal[y]};
    for (const PlausibleYield end : {PlausibleYield::least, PlausibleYield::most})
        for (const bool of_baseline_only : {false, true}) {
            evaluate_all(end, of_baseline_only, varied);
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
