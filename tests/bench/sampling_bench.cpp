// SPDX-License-Identifier: MIT
// Draws of all figures of the ten routes to 4-bromoacetanilide: drawing, evaluating and summing up timed
// apart, growth with the number of draws and of routes, and the memory that it takes.
#include "app/session.hpp"
#include "base/lanes.hpp"
#include "compare/uncertainty/certainty.hpp"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <sys/resource.h>

namespace {

using namespace routeweigh;

constexpr int threads = 2;

/// The ten routes, again and again under other names until there are so many.
Comparison routes(std::size_t count) {
    static const AssessmentRules rules = read_assessment_rules(Catalogue::embedded());
    std::vector<std::filesystem::path> paths;
    for (const auto& entry :
         std::filesystem::directory_iterator(ROUTEWEIGH_ROOT "/routes/4-bromoacetanilide"))
        paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<SourcePtr> sources;
    for (const auto& path : paths) {
        std::stringstream text;
        text << std::ifstream(path).rdbuf();
        sources.push_back(make_source(path.string(), text.str()));
    }
    Problems problems;
    const std::vector<Route> read = read_routes(sources, Catalogue::embedded(), problems);
    std::vector<Route> result;
    for (std::size_t i = 0; i < count; ++i) {
        result.push_back(read[i % read.size()]);
        if (i >= read.size()) result.back().id += "-" + std::to_string(i / read.size());
    }
    return compare_routes(std::move(result), "", rules);
}

/// Additions and multiplications of two doubles at once, none of which waits for another: as many as the
/// machine can do. A bound of evaluation is reckoned from it.
void packed_operations(benchmark::State& state) {
    constexpr std::size_t independent = 12;
    std::array<lanes::Pair, independent> sums;
    for (std::size_t i = 0; i < independent; ++i)
        sums[i] = lanes::Pair{1.0 + static_cast<double>(i), 1.0};
    const lanes::Pair factor{0.999, 1.001};
    constexpr int rounds = 1000;
    for (auto _ : state) {
        for (int round = 0; round < rounds; ++round)
            for (lanes::Pair& sum : sums)
                sum = sum * factor + factor;
        benchmark::DoNotOptimize(sums);
    }
    state.counters["operations"] = 2.0 * rounds * independent;
}
BENCHMARK(packed_operations);

/// Two doubles at once into memory that stays in the nearest cache: the other bound.
void packed_stores(benchmark::State& state) {
    std::array<lanes::Pair, 512> memory{};
    lanes::Pair value{1.0, 2.0};
    for (auto _ : state) {
        for (lanes::Pair& place : memory)
            place = value;
        benchmark::DoNotOptimize(value); // another one each time, for all the compiler knows
        benchmark::ClobberMemory();
        benchmark::DoNotOptimize(memory.data());
    }
    state.counters["operations"] = static_cast<double>(memory.size());
}
BENCHMARK(packed_stores);

/// Of the process so far, in MB.
double largest_memory() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

void draw(benchmark::State& state, std::size_t count, std::size_t draws) {
    const Comparison comparison = routes(count);
    MonteCarloOptions options;
    options.threads = threads;
    options.most = draws;
    for (auto _ : state) {
        const Certainty certainty(comparison, {}, options);
        const MonteCarloResult& drawn = certainty.drawn();
        state.counters["inputs"] = static_cast<double>(certainty.model().inputs().inputs.size());
        state.counters["outputs"] = static_cast<double>(certainty.model().model().outputs);
        state.counters["sampling_seconds"] = drawn.sampling_seconds; // of all threads together
        state.counters["evaluation_seconds"] = drawn.evaluation_seconds;
        state.counters["summing_seconds"] = drawn.summing_seconds;
        state.counters["memory_MB"] = largest_memory();
    }
    state.counters["draws"] = static_cast<double>(draws);
}

void draw_ten_routes(benchmark::State& state) {
    draw(state, 10, static_cast<std::size_t>(state.range(0)));
}
BENCHMARK(draw_ten_routes)
    ->RangeMultiplier(10)
    ->Range(10'000, 1'000'000)
    ->Iterations(1)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

void draw_many_routes(benchmark::State& state) {
    draw(state, static_cast<std::size_t>(state.range(0)), 10'000);
}
BENCHMARK(draw_many_routes)
    ->RangeMultiplier(2)
    ->Range(10, 80)
    ->Iterations(1)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

} // namespace
