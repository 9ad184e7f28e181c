// SPDX-License-Identifier: MIT
#include "compare/uncertainty/variance_shares.hpp"

#include "compare/uncertainty/draws.hpp"
#include "compare/uncertainty/parallel.hpp"

#include <algorithm>
#include <utility>

namespace routeweigh {
namespace {

/// Sums over the draws of one chunk, by output; by output and input where an input is exchanged.
struct Sums {
    std::vector<double> both; ///< half the square of what all inputs exchanged do
    std::vector<double> with,
        one; ///< what all exchanged do times what one does, and half the square of the latter
};

struct ExchangeWorker {
    Evaluate evaluate;
    DrawRows a, b, at_a, at_b, at_mixed;
    std::vector<double> column;
};

/// The second sample is that of another seed.
constexpr std::uint64_t second_sample = 0x5DEECE66D1CE4E5B;

void exchange_inputs(const Model& model, std::uint64_t seed, std::size_t chunk, ExchangeWorker& w,
                     Sums& sums) {
    const std::size_t inputs = model.inputs.size(), outputs = model.outputs;
    sums.both.assign(outputs, 0.0);
    sums.with.assign(outputs * inputs, 0.0);
    sums.one.assign(outputs * inputs, 0.0);
    for (DrawRows* rows : {&w.at_a, &w.at_b, &w.at_mixed})
        rows->resize(chunk_draws, outputs);
    draw_chunk(model.inputs, seed, chunk, w.column, w.a);
    draw_chunk(model.inputs, seed ^ second_sample, chunk, w.column, w.b);
    w.evaluate(w.a, w.at_a);
    w.evaluate(w.b, w.at_b);
    for (std::size_t d = 0; d < chunk_draws; ++d) {
        const auto at_a = w.at_a.row(d), at_b = w.at_b.row(d);
        for (std::size_t y = 0; y < outputs; ++y) {
            const double all = at_b[y] - at_a[y];
            sums.both[y] += 0.5 * all * all;
        }
    }
    // Exchanged twice, the column is what it was.
    const auto exchange = [&](std::size_t input) {
        for (std::size_t d = 0; d < chunk_draws; ++d)
            std::swap(w.a.row(d)[input], w.b.row(d)[input]);
    };
    for (std::size_t i = 0; i < inputs; ++i) {
        exchange(i);
        w.evaluate(w.a, w.at_mixed);
        exchange(i);
        for (std::size_t d = 0; d < chunk_draws; ++d) {
            const auto at_a = w.at_a.row(d), at_b = w.at_b.row(d), mixed = w.at_mixed.row(d);
            for (std::size_t y = 0; y < outputs; ++y) {
                const double all = at_b[y] - at_a[y], one = mixed[y] - at_a[y];
                sums.with[y * inputs + i] += all * one;
                sums.one[y * inputs + i] += 0.5 * one * one;
            }
        }
    }
}

} // namespace

std::vector<VarianceShares> variance_shares(const Model& model, const VarianceSharesOptions& options) {
    const std::size_t inputs = model.inputs.size();
    const std::size_t chunks = std::max<std::size_t>(1, (options.draws + chunk_draws - 1) / chunk_draws);
    std::vector<ExchangeWorker> workers(static_cast<std::size_t>(std::max(1, options.threads)));
    for (ExchangeWorker& worker : workers)
        worker.evaluate = model.evaluator();
    const std::vector<double> centre = model.evaluate(workers.front().evaluate, model.means());

    std::vector<VarianceShares> result(model.outputs);
    for (VarianceShares& shares : result)
        shares.first = shares.total = std::vector<double>(inputs, 0.0);
    // Chunks are summed in their order, a handful at a time, so that the sum does not depend on the threads.
    constexpr std::size_t at_a_time = 16;
    std::vector<Sums> sums(at_a_time);
    for (std::size_t done = 0; done < chunks; done += at_a_time) {
        const std::size_t count = std::min(at_a_time, chunks - done);
        for_each_piece(options.threads, count, [&](std::size_t worker, std::size_t index) {
            exchange_inputs(model, options.seed, done + index, workers[worker], sums[index]);
        });
        for (std::size_t c = 0; c < count; ++c)
            for (std::size_t y = 0; y < model.outputs; ++y) {
                result[y].variance += sums[c].both[y];
                for (std::size_t i = 0; i < inputs; ++i) {
                    // Half the square of what is left when all but this one are exchanged is the variance
                    // less the first-order part.
                    result[y].first[i] += sums[c].with[y * inputs + i] - sums[c].one[y * inputs + i];
                    result[y].total[i] += sums[c].one[y * inputs + i];
                }
            }
    }
    const double draws = static_cast<double>(chunks * chunk_draws);
    for (std::size_t y = 0; y < model.outputs; ++y) {
        VarianceShares& shares = result[y];
        shares.variance /= draws;
        // Rounding alone is no variance.
        const bool constant = shares.variance <= 1e-24 * centre[y] * centre[y];
        for (std::vector<double>* each : {&shares.first, &shares.total})
            for (double& share : *each)
                share = constant ? 0.0 : share / draws / shares.variance;
    }
    return result;
}

} // namespace routeweigh
