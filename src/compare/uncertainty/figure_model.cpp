// SPDX-License-Identifier: MIT
#include "compare/uncertainty/figure_model.hpp"

#include "assess/same_auxiliaries.hpp"
#include "base/index.hpp"
#include "compare/uncertainty/monte_carlo.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace routeweigh {
namespace {

/// Some draws of all figures of one route are written by this, one row a draw.
template<Number N>
void put(const N& value, DrawRows& y, std::size_t first, std::size_t column) {
    if constexpr (std::same_as<N, double>)
        y.row(first)[column] = value;
    else
        for (std::size_t lane = 0; lane < lane_count; ++lane)
            y.row(first + lane)[column] = value[lane];
}

/// The figures of all routes from their inputs; keeps what an evaluation needs, so that it does not allocate.
class Evaluator {
  public:
    Evaluator(std::vector<const Assessment*> routes, std::size_t baseline, std::size_t figures)
        : routes_(std::move(routes)), baseline_(baseline), figures_(figures) {
        for (const Assessment* route : routes_)
            nominal_.push_back(in_lanes(route->flat().nominal()));
    }

    /// Rows x to rows y, by route all figures and at last a 1 where an input had to be held or more product
    /// is isolated than forms.
    void evaluate(const UncertainInputs& uncertain, const DrawRows& x, DrawRows& y) {
        auxiliaries_.resize(x.rows * routes_.size());
        gather(x);
        for (std::size_t d = 0; d < x.rows; ++d)
            y.row(d)[y.columns - 1] = 0.0;
        for (std::size_t r = 0; r < routes_.size(); ++r) {
            const FlatRoute& flat = routes_[r]->flat();
            const std::vector<InputEffect>& effects = uncertain.effects[r];
            for (std::size_t d = 0; d < x.rows;) {
                if (d + lane_count <= x.rows) {
                    const std::span block =
                        std::span(gathered_).subspan(d / lane_count * x.columns, x.columns);
                    const Lanes held = apply<Lanes>(effects, nominal_[r], block, flat, several_);
                    if (routes_[r]->compiled().evaluate(several_, values_of_several_)) {
                        note(r, values_of_several_, held, y, d);
                        d += lane_count;
                        continue;
                    }
                }
                // The last few rows, and draws that part ways.
                for (const std::size_t end = std::min(x.rows, d + lane_count); d < end; ++d) {
                    const double held = apply<double>(effects, flat.nominal(), x.row(d), flat, one_);
                    routes_[r]->compiled().evaluate(one_, values_);
                    note(r, values_, held, y, d);
                }
            }
        }
        for (std::size_t d = 0; d < x.rows; ++d)
            same_auxiliaries(d, y);
    }

    /// One row of y from the inputs of every route.
    void evaluate(const std::vector<Inputs>& inputs, DrawRows& y) {
        auxiliaries_.resize(routes_.size());
        for (std::size_t r = 0; r < routes_.size(); ++r) {
            routes_[r]->compiled().evaluate(inputs[r], values_);
            note(r, values_, 0.0, y, 0);
        }
        same_auxiliaries(0, y);
    }

  private:
    static InputsOf<Lanes> in_lanes(const Inputs& inputs) {
        const auto wide = [](const std::vector<double>& values) {
            return std::vector<Lanes>(values.begin(), values.end());
        };
        return {wide(inputs.charged), wide(inputs.fractions), wide(inputs.isolated), wide(inputs.reused)};
    }

    /// Rows side by side, as many as go into lanes.
    void gather(const DrawRows& x) {
        const std::size_t blocks = x.rows / lane_count;
        gathered_.resize(blocks * x.columns);
        for (std::size_t b = 0; b < blocks; ++b)
            for (std::size_t lane = 0; lane < lane_count; ++lane) {
                const std::span row = x.row(b * lane_count + lane);
                for (std::size_t k = 0; k < x.columns; ++k)
                    gathered_[b * x.columns + k].set(lane, row[k]);
            }
    }

    /// All figures but the last, which needs the baseline, and what that one takes.
    template<Number N>
    void note(std::size_t route, const RouteFigures::ValuesOf<N>& values, const N& held, DrawRows& y,
              std::size_t first) {
        std::size_t column = route * figures_;
        for (const N& metric : values.metrics)
            put(metric, y, first, column++);
        const HazardScheme& scheme = routes_[route]->rules().hazard.score;
        for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
            for (std::size_t p = 0; p < place_count; ++p)
                if (scheme.places[p].scored)
                    put(values.hazard.value[cell_index(e, static_cast<HazardPlace>(p))], y, first, column++);
        put(values.score.value, y, first, column);

        N outside = held;
        for (const StepResultOf<N>& step : values.evaluation.steps)
            outside += choose(step.isolated <= step.made * (1.0 + rounding_of_figures), N(0.0), N(1.0));
        const AuxiliariesOf<N> auxiliaries = auxiliaries_of(values, routes_[route]->flat().final_step());
        if constexpr (std::same_as<N, double>) {
            if (outside > 0.0) y.row(first)[y.columns - 1] = 1.0;
            auxiliaries_[first * routes_.size() + route] = auxiliaries;
        } else {
            for (std::size_t lane = 0; lane < lane_count; ++lane) {
                if (outside[lane] > 0.0) y.row(first + lane)[y.columns - 1] = 1.0;
                auxiliaries_[(first + lane) * routes_.size() + route] = {
                    auxiliaries.inputs[lane], auxiliaries.drown_out[lane], auxiliaries.product[lane],
                    auxiliaries.theory[lane]};
            }
        }
    }

    /// The last figure of every route.
    void same_auxiliaries(std::size_t draw, DrawRows& y) const {
        const Auxiliaries* by_route = auxiliaries_.data() + draw * routes_.size();
        for (std::size_t r = 0; r < routes_.size(); ++r)
            y.row(draw)[(r + 1) * figures_ - 1] =
                intensity_with_same_auxiliaries(by_route[r], by_route[baseline_]);
    }

    std::vector<const Assessment*> routes_;
    std::size_t baseline_, figures_;
    std::vector<InputsOf<Lanes>> nominal_; ///< by route
    // what evaluations work with
    std::vector<Auxiliaries> auxiliaries_; ///< by draw and route
    std::vector<Lanes> gathered_;          ///< x, by block of draws and input
    Inputs one_;
    InputsOf<Lanes> several_;
    RouteFigures::Values values_;
    RouteFigures::ValuesOf<Lanes> values_of_several_;
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
    same.id = same_auxiliaries_id;
    same.name = "Process mass intensity, same auxiliaries";
    heads_.list.push_back(same);
    inputs_ = uncertain_inputs(routes_, options);

    model_.inputs = inputs_.inputs;
    model_.outputs = routes_.size() * heads_.count() + 1;
    model_.evaluator = [this] {
        return [this, evaluator = Evaluator(routes_, comparison_->baseline_index(), heads_.count())](
                   const DrawRows& x, DrawRows& y) mutable {
            evaluator.evaluate(inputs_, x, y);
            for (std::size_t e = 0; e < inputs_.elements.size(); ++e)
                for (std::size_t d = 0; d < x.rows; ++d) {
                    const double off = x.row(d)[inputs_.first_element + e];
                    for (std::size_t o = 0; o < out_of_range_output(); ++o)
                        y.row(d)[o] += inputs_.elements[e].slope[o] * off;
                }
        };
    };
    vary_assumed_yields();
}

void FigureModel::vary_assumed_yields() {
    Evaluator evaluator(routes_, comparison_->baseline_index(), heads_.count());
    const auto evaluate_all = [&](std::optional<PlausibleYield> end, bool of_baseline_only) {
        std::vector<Inputs> inputs;
        for (std::size_t r = 0; r < routes_.size(); ++r) {
            inputs.push_back(routes_[r]->flat().nominal());
            if (end && (!of_baseline_only || r == comparison_->baseline_index()))
                move_yields(*routes_[r], inputs_.assumed_steps[r], *end, inputs.back());
        }
        DrawRows y;
        y.resize(1, model_.outputs);
        evaluator.evaluate(inputs, y);
        return y.values;
    };
    const std::vector<double> nominal = evaluate_all({}, false);
    assumed_.resize(model_.outputs);
    for (std::size_t y = 0; y < model_.outputs; ++y)
        assumed_[y].ends = {nominal[y], nominal[y]};
    for (const PlausibleYield end : {PlausibleYield::least, PlausibleYield::most})
        for (const bool of_baseline_only : {false, true}) {
            const std::vector<double> varied = evaluate_all(end, of_baseline_only);
            for (std::size_t y = 0; y < model_.outputs; ++y) {
                OfAssumedYield& entry = assumed_[y];
                entry.rests = entry.rests ||
                              std::abs(varied[y] - nominal[y]) > rounding_of_figures * std::abs(nominal[y]);
                if (std::isnan(varied[y])) continue;
                entry.ends = {std::min(entry.ends.first, varied[y]), std::max(entry.ends.second, varied[y])};
            }
        }
}

} // namespace routeweigh
