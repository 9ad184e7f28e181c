// SPDX-License-Identifier: MIT
// How long an evaluation takes, and how time grows with the number of routes and of steps.
#include "app/session.hpp"
#include "documents/comparison_report.hpp"
#include "route/route_reader.hpp"
#include "writing/writer_list.hpp"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <malloc.h>

namespace {

using namespace routeweigh;

std::vector<SourcePtr> family_a() {
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
    return sources;
}

Route read_one(const SourcePtr& source) {
    Problems problems;
    return read_route(source, Catalogue::embedded(), problems);
}

const AssessmentRules& rules() {
    static const AssessmentRules loaded = read_assessment_rules(Catalogue::embedded());
    return loaded;
}

/// One evaluation of a one-step route with all figures, the number that sampling multiplies.
void evaluate_one_route(benchmark::State& state) {
    const Route route = read_one(family_a()[static_cast<std::size_t>(state.range(0))]);
    const RouteFigures figures(route, rules());
    RouteFigures::Values values;
    Inputs inputs = figures.flat().nominal();
    double wobble = 1.0;
    for (auto _ : state) {
        wobble = wobble > 1.005 ? 0.995 : wobble + 1e-4;
        inputs.charged[0] = figures.flat().nominal().charged[0] * wobble;
        figures.evaluate(inputs, values);
        benchmark::DoNotOptimize(values.score.value);
    }
    state.SetLabel(route.id);
}
BENCHMARK(evaluate_one_route)->DenseRange(0, 9);

void read_and_check_one_route(benchmark::State& state) {
    const SourcePtr source = family_a()[3];
    for (auto _ : state)
        benchmark::DoNotOptimize(read_one(source));
}
BENCHMARK(read_and_check_one_route);

void compare_ten_routes_to_json(benchmark::State& state) {
    const std::vector<SourcePtr> sources = family_a();
    const writing::Writer* json = writing::find_writer("json");
    for (auto _ : state) {
        Problems problems;
        const Comparison comparison =
            compare_routes(read_routes(sources, Catalogue::embedded(), problems), "A1", rules());
        benchmark::DoNotOptimize(json->write(comparison_report(comparison, json->reader), {}));
    }
}
BENCHMARK(compare_ten_routes_to_json)->Unit(benchmark::kMillisecond);

/// The same route again under other names.
void compare_many_routes(benchmark::State& state) {
    const Route pattern = read_one(family_a()[3]);
    for (auto _ : state) {
        std::vector<Route> routes;
        for (int i = 0; i < state.range(0); ++i) {
            routes.push_back(pattern);
            routes.back().id = "r" + std::to_string(i);
        }
        benchmark::DoNotOptimize(compare_routes(std::move(routes), "", rules()));
    }
    state.SetComplexityN(state.range(0));
}
BENCHMARK(compare_many_routes)
    ->RangeMultiplier(10)
    ->Range(10, 10000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity();

/// A linear route of many steps: the step of a shipped route, each making what the next one uses.
class LongRoute {
  public:
    explicit LongRoute(int steps) {
        substances_.resize(static_cast<std::size_t>(steps) + 1);
        for (std::size_t i = 0; i < substances_.size(); ++i) {
            substances_[i] = *Catalogue::embedded().find_substance("acetanilide");
            substances_[i].id = substances_[i].name = "s" + std::to_string(i);
        }
        materials_.reserve(substances_.size());
        for (const Substance& substance : substances_) {
            Material& neat = materials_.emplace_back();
            neat.id = neat.name = substance.name;
            neat.components = {{&substance, 1.0, false}};
        }
        const Material* solvent = Catalogue::embedded().find_material("water");
        route_.id = "long";
        route_.product = &substances_.back();
        for (std::size_t i = 0; i + 1 < substances_.size(); ++i) {
            Step step;
            step.id = "step" + std::to_string(i);
            step.product = &substances_[i + 1];
            step.reference = &substances_[i];
            step.overall.parts = {{&substances_[i], -1.0}, {&substances_[i + 1], 1.0}};
            step.isolated.yield = 0.999;
            Stage stage;
            stage.charges = {charge(&materials_[i], "substrate"), charge(solvent, "solvent")};
            Reaction reaction;
            reaction.equation = step.overall;
            stage.reactions = {reaction};
            step.stages = {stage};
            route_.steps.push_back(std::move(step));
        }
    }
    const Route& route() const { return route_; }

  private:
    static Charge charge(const Material* material, std::string_view role) {
        Charge result;
        result.material = material;
        result.amount = parse_written("1.0 g");
        result.role = find_role(role);
        return result;
    }
    std::vector<Substance> substances_;
    std::vector<Material> materials_;
    Route route_;
};

void compile_long_route(benchmark::State& state) {
    const LongRoute long_route(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(RouteFigures(long_route.route(), rules()).flat().outflow_count());
    state.SetComplexityN(state.range(0));
}
BENCHMARK(compile_long_route)
    ->RangeMultiplier(10)
    ->Range(10, 10000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity();

void evaluate_long_route(benchmark::State& state) {
    const LongRoute long_route(static_cast<int>(state.range(0)));
    const RouteFigures figures(long_route.route(), rules());
    RouteFigures::Values values;
    for (auto _ : state) {
        figures.evaluate(figures.flat().nominal(), values);
        benchmark::DoNotOptimize(values.score.value);
    }
    state.SetComplexityN(state.range(0));
}
BENCHMARK(evaluate_long_route)
    ->RangeMultiplier(10)
    ->Range(10, 10000)
    ->Unit(benchmark::kMicrosecond)
    ->Complexity();

} // namespace

int main(int argc, char** argv) {
    // What one round leaves is kept for the next. Else large sizes would pay for fresh pages each time, and
    // small ones would not.
    mallopt(M_MMAP_THRESHOLD, 1 << 30);
    mallopt(M_TRIM_THRESHOLD, -1);
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
}
