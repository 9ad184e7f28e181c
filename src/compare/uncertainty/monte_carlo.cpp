// SPDX-License-Identifier: MIT
#include "compare/uncertainty/monte_carlo.hpp"

#include "compare/uncertainty/parallel.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <limits>
#include <numeric>

namespace routeweigh {
namespace {

constexpr std::size_t chunks_in_batch = batch_draws / chunk_draws;
static_assert(chunks_in_batch * chunk_draws == batch_draws);

class Stopwatch {
  public:
    /// Seconds since the last lap.
    double lap() {
        const auto now = std::chrono::steady_clock::now();
        const double seconds = std::chrono::duration<double>(now - last_).count();
        last_ = now;
        return seconds;
    }

  private:
    std::chrono::steady_clock::time_point last_ = std::chrono::steady_clock::now();
};

/// What one thread keeps from chunk to chunk.
struct DrawWorker {
    Evaluate evaluate;
    DrawRows inputs, outputs;
    std::vector<double> column;
    double sampling_seconds = 0, evaluation_seconds = 0, summing_seconds = 0;
};

void evaluate_chunk(const Model& model, std::uint64_t seed, std::size_t batch_number, std::size_t chunk,
                    DrawWorker& worker, DrawBatch& batch) {
    Stopwatch watch;
    draw_chunk(model.inputs, seed, batch_number * chunks_in_batch + chunk, worker.column, worker.inputs);
    worker.sampling_seconds += watch.lap();
    worker.outputs.resize(chunk_draws, model.outputs);
    worker.evaluate(worker.inputs, worker.outputs);
    worker.evaluation_seconds += watch.lap();
    for (std::size_t y = 0; y < model.outputs; ++y) {
        double* column = batch.values.data() + y * batch_draws + chunk * chunk_draws;
        for (std::size_t d = 0; d < chunk_draws; ++d)
            column[d] = worker.outputs.values[d * model.outputs + y];
    }
    worker.summing_seconds += watch.lap();
}

/// Mean, standard deviation and the ends of the interval of one batch.
using Moments = std::array<double, 4>;
enum { mean_of, deviation_of, low_of, high_of };

Moments moments(std::span<const double> column, double coverage, std::vector<double>& scratch) {
    const double first = column.front();
    double sum = 0.0, square = 0.0;
    bool constant = true;
    for (const double value : column) {
        const double off = value - first;
        sum += off;
        square += off * off;
        constant = constant && off == 0.0;
    }
    if (constant) return {first, 0.0, first, first};
    const double count = static_cast<double>(column.size());
    Moments result{first + sum / count,
                   std::sqrt(std::max(0.0, (square - sum * sum / count) / (count - 1.0)))};
    if (!std::isfinite(result[mean_of]) || !std::isfinite(result[deviation_of])) {
        result.fill(std::numeric_limits<double>::quiet_NaN());
        return result;
    }
    // 7.7.2: with M draws in order, the interval reaches from the r-th to the (r + pM)-th, both counted from
    // 1.
    scratch.assign(column.begin(), column.end());
    const auto covered = static_cast<std::ptrdiff_t>(std::lround(coverage * count));
    const auto low =
        std::max<std::ptrdiff_t>((static_cast<std::ptrdiff_t>(column.size()) - covered) / 2 - 1, 0);
    std::nth_element(scratch.begin(), scratch.begin() + low, scratch.end());
    result[low_of] = scratch[static_cast<std::size_t>(low)];
    const auto high = std::min(low + covered, static_cast<std::ptrdiff_t>(column.size()) - 1);
    std::nth_element(scratch.begin() + low, scratch.begin() + high, scratch.end());
    result[high_of] = scratch[static_cast<std::size_t>(high)];
    return result;
}

/// The four numbers of one output, averaged over the batches, and how they scatter.
class Averages {
  public:
    void add(const Moments& batch) {
        ++count_;
        for (std::size_t i = 0; i < batch.size(); ++i) {
            const double off = batch[i] - average_[i];
            average_[i] += off / count_;
            squares_[i] += off * (batch[i] - average_[i]);
        }
        // Of deviations it is the squares that average without bias; what the means of the batches scatter by
        // is part of the deviation of all.
        variance_ += (batch[deviation_of] * batch[deviation_of] - variance_) / count_;
    }

    double deviation() const {
        const double within = static_cast<double>(batch_draws) - 1.0;
        const double all = static_cast<double>(batch_draws) * count_ - 1.0;
        return std::sqrt(std::max(
            0.0, (count_ * within * variance_ + static_cast<double>(batch_draws) * squares_[mean_of]) / all));
    }

    /// 7.9.4, steps g to i: twice the standard deviation of each average within the tolerance.
    bool stable(int digits) const {
        if (count_ < 2.0) return false;
        if (std::isnan(average_[mean_of])) return true; // more draws will not give it a value
        if (interval_is_point()) return true;
        const double tolerance = numerical_tolerance(deviation(), digits);
        return std::all_of(squares_.begin(), squares_.end(), [&](double square) {
            return 2.0 * std::sqrt(square / (count_ * (count_ - 1.0))) <= tolerance;
        });
    }

    DrawnOutput result(int digits) const {
        return {average_[mean_of], deviation(), average_[low_of], average_[high_of],
                digits > 0 && stable(digits)};
    }

  private:
    /// All draws but a few agree: only those few would be counted better, and the interval never sees them.
    bool interval_is_point() const {
        return average_[high_of] - average_[low_of] <= rounding_of_figures * std::abs(average_[high_of]);
    }

    double count_ = 0;
    Moments average_{}, squares_{};
    double variance_ = 0;
};

} // namespace

double numerical_tolerance(double u, int digits) {
    if (!(u > 0.0)) return 0.0;
    // The digits are those of the rounded number: 0.0996 with two of them is 0.10.
    double exponent = std::floor(std::log10(u));
    const double scaled = std::round(u / std::pow(10.0, exponent - digits + 1.0));
    if (scaled >= std::pow(10.0, digits)) exponent += 1.0;
    return 0.5 * std::pow(10.0, exponent - digits + 1.0);
}

MonteCarloResult propagate_draws(const Model& model, const MonteCarloOptions& options) {
    const std::size_t batches = std::max<std::size_t>(1, (options.most + batch_draws - 1) / batch_draws);
    std::vector<DrawWorker> workers(static_cast<std::size_t>(std::max(1, options.threads)));
    for (DrawWorker& worker : workers)
        worker.evaluate = model.evaluator();
    DrawBatch batch{batch_draws, std::vector<double>(model.outputs * batch_draws)};
    std::vector<Averages> averages(model.outputs);
    std::vector<std::size_t> asked = options.asked;
    if (asked.empty()) {
        asked.resize(model.outputs);
        std::iota(asked.begin(), asked.end(), std::size_t{0});
    }
    MonteCarloResult result;
    for (std::size_t number = 0; number < batches; ++number) {
        for_each_piece(options.threads, chunks_in_batch, [&](std::size_t worker, std::size_t chunk) {
            evaluate_chunk(model, options.seed, number, chunk, workers[worker], batch);
        });
        for_each_piece(options.threads, model.outputs, [&](std::size_t worker, std::size_t y) {
            Stopwatch watch;
            averages[y].add(moments(batch.column(y), options.coverage, workers[worker].column));
            workers[worker].summing_seconds += watch.lap();
        });
        if (options.each_batch) options.each_batch(batch);
        result.draws += batch_draws;
        if (options.digits > 0 && std::all_of(asked.begin(), asked.end(), [&](std::size_t output) {
                return averages[output].stable(options.digits);
            }))
            break;
        if (number + 1 < batches && options.go_on && !options.go_on({result.draws, batches * batch_draws})) {
            result.interrupted = true;
            break;
        }
    }
    for (const Averages& average : averages)
        result.outputs.push_back(average.result(options.digits));
    for (const DrawWorker& worker : workers) {
        result.sampling_seconds += worker.sampling_seconds;
        result.evaluation_seconds += worker.evaluation_seconds;
        result.summing_seconds += worker.summing_seconds;
    }
    return result;
}

} // namespace routeweigh
