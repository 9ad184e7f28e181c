// SPDX-License-Identifier: MIT
// Propagation of distributions by drawing (JCGM 101:2008), adaptive, in memory that does not grow with the
// number of draws.
//
// Draws come in batches of 10 000 (7.9.4: at least 100/(1 - p) and at least 10 000). Mean, standard deviation
// and interval are averages over the batches, and their scatter from batch to batch says when enough have
// been drawn. The standard takes the interval from all draws together at the end; here it is the average over
// the batches, whose bias is of the order of one part in the size of a batch. An output whose interval is a
// point keeps no run going either, where the standard would draw until the deviation of its few other values
// is known.
#pragma once

#include "compare/uncertainty/draws.hpp"

#include <cmath>

namespace routeweigh {

inline constexpr std::size_t batch_draws = 10'000;
/// Relative. Two figures closer than this are equal: only the order of additions parts them.
inline constexpr double rounding_of_figures = 1e-12;

/// One batch: a column an output.
struct DrawBatch {
    std::size_t draws = 0;
    std::vector<double> values;

    std::span<const double> column(std::size_t output) const {
        return {values.data() + output * draws, draws};
    }
};

struct MonteCarloProgress {
    std::size_t draws = 0, most = 0;
};

struct MonteCarloOptions {
    std::uint64_t seed = 1;
    int threads = 1;
    std::size_t most = batch_draws; ///< draws, rounded up to whole batches
    /// Stop as soon as the results are stable to this many significant digits of the standard uncertainty
    /// (7.9.2); 0: draw as many as `most` says.
    int digits = 0;
    std::vector<std::size_t> asked; ///< outputs that must be stable to end the run; none: all
    double coverage = 0.95;         ///< of the interval, which leaves equal shares on both sides
    /// Sees every batch, on the calling thread.
    std::function<void(const DrawBatch&)> each_batch;
    /// Called between batches; false stops the work, and what has been drawn is the result.
    std::function<bool(const MonteCarloProgress&)> go_on;
};

struct DrawnOutput {
    double mean = 0, deviation = 0; ///< NaN where a draw has no value
    double low = 0, high = 0;       ///< of the coverage interval
    bool stable = false;            ///< to the digits asked for; of no meaning where none were asked for

    /// By more than rounding.
    bool varies() const { return deviation > rounding_of_figures * std::abs(mean); }
};

struct MonteCarloResult {
    std::vector<DrawnOutput> outputs;
    std::size_t draws = 0;
    bool interrupted = false;
    double sampling_seconds = 0, evaluation_seconds = 0, summing_seconds = 0; ///< over all threads
};

MonteCarloResult propagate_draws(const Model& model, const MonteCarloOptions& options);

/// Half a unit in the last of so many significant digits of u (JCGM 101:2008, 7.9.2): 0.005 for u = 0.35 and
/// two digits. 0 for u = 0.
double numerical_tolerance(double u, int digits);

} // namespace routeweigh
