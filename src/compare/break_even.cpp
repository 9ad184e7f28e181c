// SPDX-License-Identifier: MIT
#include "compare/break_even.hpp"

#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>

namespace routeweigh {
namespace {

constexpr int grid = 64;        // intervals looked through
constexpr int halvings = 48;    // to find where the figure ends
constexpr double equal = 1e-10; // relative; closer than this is the target

class Search {
  public:
    Search(const Response& figure, double target, BreakEvenSearch& result)
        : figure_(figure), target_(target), result_(result) {}

    void run(double low, double high, std::span<const double> through) {
        std::vector<double> inputs(through.begin(), through.end());
        for (int i = 0; i <= grid; ++i)
            inputs.push_back(low + (high - low) * i / grid);
        // A figure per gram of product climbs steeply at the low end.
        for (const double share : {0.1, 0.01, 0.001})
            inputs.push_back(low + share * (high - low) / grid);
        std::sort(inputs.begin(), inputs.end());
        inputs.erase(std::unique(inputs.begin(), inputs.end()), inputs.end());
        look(inputs);
        if (result_.curve.empty()) return;
        result_.low = result_.curve.front().input;
        result_.high = result_.curve.back().input;
        // Values that are never possible themselves (a yield of 0) are no cut.
        result_.low_cut = result_.low > low + 1e-9 * (high - low);
        result_.high_cut = result_.high < high - 1e-9 * (high - low);
        find_roots();
    }

  private:
    double figure_at(double input) {
        const double value = figure_(input);
        if (std::isfinite(value)) result_.curve.push_back({input, value});
        return value;
    }

    bool reaches(double value) const {
        return std::abs(value - target_) <= equal * std::max(std::abs(target_), std::abs(value));
    }

    /// Evaluates the grid, and closes in on the ends of where the figure has a value. A gap within is passed.
    void look(const std::vector<double>& inputs) {
        std::optional<double> last;
        bool last_good = false;
        for (const double input : inputs) {
            const bool good = std::isfinite(figure_at(input));
            if (last && good != last_good) close_in(good ? input : *last, good ? *last : input);
            last = input;
            last_good = good;
        }
        sort_curve();
    }

    void close_in(double good, double bad) {
        for (int i = 0; i < halvings; ++i) {
            const double middle = 0.5 * (good + bad);
            if (middle == good || middle == bad) break;
            (std::isfinite(figure_at(middle)) ? good : bad) = middle;
        }
    }

    void sort_curve() {
        std::sort(result_.curve.begin(), result_.curve.end(),
                  [](const auto& a, const auto& b) { return a.input < b.input; });
    }

    void find_roots() {
        const std::vector<BreakEvenSearch::Point> points = result_.curve;
        const auto [least, most] = std::minmax_element(
            points.begin(), points.end(), [](const auto& a, const auto& b) { return a.figure < b.figure; });
        result_.constant = most->figure - least->figure <= 1e-12 * std::abs(most->figure);
        if (result_.constant) {
            result_.everywhere = reaches(most->figure);
            return;
        }
        for (std::size_t i = 0; i < points.size(); ++i) {
            if (reaches(points[i].figure)) {
                add_root(points[i].input);
                continue;
            }
            if (i + 1 < points.size() && !reaches(points[i + 1].figure)) between(points, i);
        }
        std::sort(result_.roots.begin(), result_.roots.end());
        sort_curve();
    }

    /// Roots within one interval whose ends are none.
    void between(const std::vector<BreakEvenSearch::Point>& points, std::size_t i) {
        const auto &a = points[i], &b = points[i + 1];
        if ((a.figure < target_) != (b.figure < target_)) {
            bracket(a.input, b.input);
            return;
        }
        // The figure may turn round at the target between two points of one side.
        const bool turns = i > 0 && i + 2 < points.size() &&
                           distance(points[i - 1].figure) >= distance(a.figure) &&
                           distance(points[i + 2].figure) >= distance(b.figure);
        if (!turns) return;
        const double side = a.figure < target_ ? -1.0 : 1.0;
        std::uintmax_t most = 60;
        const auto [input, away] = boost::math::tools::brent_find_minima(
            [&](double x) {
                const double value = figure_(x);
                return std::isfinite(value) ? side * (value - target_) : std::numeric_limits<double>::max();
            },
            a.input, b.input, 40, most);
        if (away > equal * std::abs(target_)) return;
        figure_at(input);
        if (away >= -equal * std::abs(target_)) {
            add_root(input);
            return;
        }
        bracket(a.input, input);
        bracket(input, b.input);
    }

    double distance(double value) const { return std::abs(value - target_); }

    void bracket(double low, double high) {
        std::uintmax_t most = 100;
        const auto away = [&](double input) { return figure_(input) - target_; };
        const auto [a, b] = boost::math::tools::toms748_solve(
            away, low, high, boost::math::tools::eps_tolerance<double>(52), most);
        const double root = std::abs(away(a)) < std::abs(away(b)) ? a : b;
        if (std::abs(away(root)) <= 1e-8 * std::max(std::abs(target_), std::abs(figure_(low)))) {
            figure_at(root);
            add_root(root);
        } else {
            result_.jumps.push_back(root);
        }
    }

    void add_root(double input) {
        const auto same = [input](double other) { return std::abs(other - input) <= 1e-9 * std::abs(input); };
        if (std::none_of(result_.roots.begin(), result_.roots.end(), same)) result_.roots.push_back(input);
    }

    const Response& figure_;
    double target_;
    BreakEvenSearch& result_;
};

} // namespace

BreakEvenSearch find_break_even(const Response& figure, double target, double low, double high,
                                std::span<const double> through) {
    BreakEvenSearch result;
    result.low = 1.0; // nowhere
    result.high = 0.0;
    Search(figure, target, result).run(low, high, through);
    return result;
}

} // namespace routeweigh
