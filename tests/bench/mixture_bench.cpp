// SPDX-License-Identifier: MIT
// A million random compositions are classified without a crash, and how long one takes.
#include "assess/mixture/mixture_classification.hpp"
#include "chemistry/catalogue.hpp"
#include "support/random_mixture.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace routeweigh;

constexpr int a_million = 1'000'000;

const MixtureRules& mixture_rules() {
    static const MixtureRules read = read_mixture_rules(Catalogue::embedded());
    return read;
}

void classify_random_compositions(benchmark::State& state) {
    const auto substances = Catalogue::embedded().all_substances();
    test::Dice dice(1);
    std::int64_t classified = 0;
    for (auto _ : state) {
        const MixtureClassification found = classify(test::random_mixture(dice, substances), mixture_rules());
        classified += found.label.statements.empty() ? 0 : 1;
    }
    state.SetItemsProcessed(state.iterations());
    state.counters["with_statements"] = static_cast<double>(classified);
}
BENCHMARK(classify_random_compositions)->Iterations(a_million)->Unit(benchmark::kMicrosecond);

void classify_one_bottle(benchmark::State& state) {
    const Mixture mixture = mixture_of(*Catalogue::embedded().find_material("hydrogen peroxide 30 %"));
    for (auto _ : state)
        benchmark::DoNotOptimize(classify(mixture, mixture_rules()).label.signal.size());
}
BENCHMARK(classify_one_bottle)->Unit(benchmark::kMicrosecond);

void read_the_rules(benchmark::State& state) {
    for (auto _ : state)
        benchmark::DoNotOptimize(read_mixture_rules(Catalogue::embedded()).limits.title.size());
}
BENCHMARK(read_the_rules)->Unit(benchmark::kMillisecond);

} // namespace
