// SPDX-License-Identifier: MIT
// What follows when every step has been run once: how often each runs, and what is used again.
#include "route/flat_route.hpp"

#include "base/index.hpp"

#include <cstddef>

namespace routeweigh {
namespace {

/// What scaling works with; a thread keeps its own so that evaluation does not allocate.
template<Number N>
struct Scale {
    std::vector<N> ratios, runs;
};

} // namespace

template<Number N>
void FlatRoute::scale_and_reuse(const InputsOf<N>& inputs, EvaluationOf<N>& result) const {
    if (steps_.size() > 1) {
        const auto feeds = scale_.feeds();
        thread_local Scale<N> scale;
        auto& [ratios, runs] = scale;
        ratios.assign(feeds.size(), N(0.0));
        runs.assign(steps_.size(), N(0.0));
        for (std::size_t i = 0; i < inflows_.size(); ++i)
            if (const Inflow& inflow = inflows_[i]; inflow.fed_by >= 0) {
                const StepResultOf<N>& maker = result.steps[at(inflow.fed_by)];
                const N grams = maker.isolated *
                                steps_[at(inflow.fed_by)].molar_mass[at(steps_[at(inflow.fed_by)].product)];
                ratios[at(inflow.feed)] += inputs.charged[at(inflow.slot)] * inputs.fractions[i] / grams;
            }
        scale_.solve<N>(ratios, runs, result.alike);
        for (std::size_t step = 0; step < steps_.size(); ++step)
            result.steps[step].scale = runs[step];
        for (std::size_t i = 0; i < inflows_.size(); ++i)
            result.in[i] *= runs[at(inflows_[i].step)];
        for (std::size_t step = 0; step < steps_.size(); ++step) {
            const FlatStep& flat = steps_[step];
            const std::size_t size = flat.substances.size(),
                              first = at(streams_[at(flat.first_stream)].first_outflow);
            for (std::size_t k = first; k < first + at(flat.stream_count) * size; ++k) {
                result.out[k] *= runs[step];
                result.out_unreacted[k] *= runs[step];
            }
            for (std::size_t s = 0; s < size; ++s)
                result.flask[at(flat.first_flask) + s] *= runs[step];
        }
    }
    const N none = 0.0;
    const FlatStep& last = steps_[at(scale_.final_step())];
    result.product = result.steps[at(scale_.final_step())].isolated * last.molar_mass[at(last.product)];

    for (std::size_t r = 0; r < reuse_.size(); ++r) {
        const FlatReuse& reuse = reuse_[r];
        N left = inputs.reused[r] * result.out[at(reuse.outflow)];
        // Both readings give back the same mass, so that what is bought does not depend on how the loss is
        // read.
        left = lesser(left, result.out_unreacted[at(reuse.outflow)]);
        N charged = 0.0;
        for (const int inflow : reuse.inflows)
            charged += result.in[at(inflow)] - result.credit[at(inflow)];
        // Of every charge, so that all stay in proportion.
        const N share = choose(charged > none, lesser(N(1.0), left / charged), none);
        for (const int inflow : reuse.inflows) {
            const N credit = share * (result.in[at(inflow)] - result.credit[at(inflow)]);
            result.credit[at(inflow)] += credit;
            result.recovered[r] += credit;
        }
        result.out[at(reuse.outflow)] -= result.recovered[r];
        result.out_unreacted[at(reuse.outflow)] -= result.recovered[r];
    }
}

template void FlatRoute::scale_and_reuse(const InputsOf<double>&, EvaluationOf<double>&) const;
template void FlatRoute::scale_and_reuse(const InputsOf<Lanes>&, EvaluationOf<Lanes>&) const;

} // namespace routeweigh
