// SPDX-License-Identifier: MIT
#include "cli/sampling.hpp"

#include "app/atomic_weights.hpp"
#include "cli/print_problems.hpp"
#include "cli/results_option.hpp"
#include "cli/within.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <csignal>
#include <cstdint>
#include <cstdio>
#include <thread>

#include <unistd.h>

namespace routeweigh::cli {
namespace {

constexpr std::size_t most_adaptive = 1'000'000;

volatile std::sig_atomic_t interrupted = 0;
bool ended_early = false; ///< a run of draws, by an interrupt

/// While it lives an interrupt sets a flag; a second one ends the program as usual.
class InterruptGuard {
  public:
    InterruptGuard() {
        interrupted = 0;
        previous_ = std::signal(SIGINT, [](int) {
            interrupted = 1;
            std::signal(SIGINT, SIG_DFL);
        });
    }
    ~InterruptGuard() { std::signal(SIGINT, previous_); }
    InterruptGuard(const InterruptGuard&) = delete;
    InterruptGuard& operator=(const InterruptGuard&) = delete;

  private:
    void (*previous_)(int);
};

} // namespace

bool draws_were_interrupted() {
    return ended_early;
}

void SamplingOptions::add_to(CLI::App& command, int default_digits) {
    command_ = &command;
    digits_ = default_digits;
    const std::string group = "Drawing";
    command
        .add_option("--draws", draws_,
                    "Draws of all uncertain inputs, in batches of 10000; with --digits at most so many. An "
                    "interrupt (Ctrl-C) ends a long run: what has been drawn is written, exit status 130")
        ->check(CLI::Range(std::size_t{1}, std::size_t{1'000'000'000}).description(""))
        ->type_name("N")
        ->group(group);
    command
        .add_option(
            "--digits", digits_,
            fmt::format("Draw until this many digits of every standard uncertainty are stable, 1 to 3 "
                        "(at most {} draws where --draws does not say)",
                        most_adaptive))
        ->check(CLI::Range(1, 3).description(""))
        ->type_name("N")
        ->group(group);
    command.add_option("--seed", seed_, "Other random numbers; the same seed gives the same answer (1)")
        ->check(CLI::Range(std::int64_t{0}, std::int64_t{999'999'999'999'999'999}).description(""))
        ->type_name("N")
        ->group(group);
    command.add_option("--threads", threads_, "Threads to draw with; the answer does not depend on them")
        ->check(CLI::Range(1, 256).description(""))
        ->type_name("N")
        ->group(group);
    command.add_option("--coverage", coverage_, "Share of the draws in the interval, in % (95)")
        ->check(within(1.0, 99.9))
        ->type_name("PERCENT")
        ->group(group);
    command
        .add_option("--results", results_,
                    "Isolated yields that were found, in place of the yield of the route with this id (of a "
                    "single route "
                    "without an id): one a line (\"71 %\" or \"1.52 g\"), or the table of a class as "
                    "\"results\" reads it")
        ->type_name("[ID=]FILE")
        ->take_all()
        ->group(group);
    command
        .add_option(
            "--vary-assumed", points_,
            "Vary every assumed yield by so many points either way (rectangular); shares of runs that "
            "rest on it are still not given")
        ->check(within(0.1, 50.0))
        ->type_name("POINTS")
        ->group(group);
    command
        .add_flag("--atomic-weights", atomic_weights_,
                  "Vary the standard atomic weights too, within the uncertainty that IUPAC states")
        ->group(group);
}

bool SamplingOptions::asked() const {
    for (const char* name : {"--draws", "--digits", "--seed", "--threads", "--coverage", "--results",
                             "--vary-assumed", "--atomic-weights"})
        if (command_->count(name) > 0) return true;
    return false;
}

std::vector<Route> SamplingOptions::read(std::vector<SourcePtr>& sources, const Catalogue& catalogue,
                                         const AssessmentRules& rules) {
    Problems problems;
    std::vector<Route> routes = read_routes(sources, catalogue, problems);
    if (!results_.empty()) {
        const Comparison as_written = compare_routes(std::move(routes), "", rules);
        found_ = read_all_found(results_, as_written, problems);
        sources = with_found_yields(as_written, found_);
        Problems said_before;
        routes = read_routes(sources, catalogue, said_before);
    }
    print_problems(problems.all);
    return routes;
}

std::unique_ptr<Certainty> SamplingOptions::run(const Comparison& comparison,
                                                const std::vector<SourcePtr>& sources,
                                                const Catalogue& catalogue,
                                                const std::vector<std::string>& figures) const {
    UncertaintyOptions uncertainty;
    uncertainty.assumed_yield_half_width = points_ / 100.0;
    if (atomic_weights_) uncertainty.elements = atomic_weight_effects(comparison, sources, catalogue);
    uncertainty.found = found_;
    MonteCarloOptions options;
    options.seed = seed_;
    options.coverage = coverage_ / 100.0;
    options.threads =
        threads_ > 0 ? threads_ : std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
    options.digits = draws_ > 0 && command_->count("--digits") == 0 ? 0 : digits_;
    options.most = draws_ > 0 ? draws_ : options.digits > 0 ? most_adaptive : batch_draws;
    const bool terminal = ::isatty(STDERR_FILENO) != 0;
    bool shown = false;
    options.go_on = [&](const MonteCarloProgress& progress) {
        if (terminal) {
            fmt::print(stderr, "\r{} of at most {} draws ", progress.draws, progress.most);
            std::fflush(stderr);
            shown = true;
        }
        return interrupted == 0;
    };
    const InterruptGuard guard;
    auto certainty = std::make_unique<Certainty>(comparison, uncertainty, std::move(options), figures);
    if (shown) fmt::print(stderr, "\r{:48}\r", "");
    ended_early = certainty->drawn().interrupted;
    if (ended_early)
        fmt::print(stderr, "stopped after {} draws; what follows rests on these\n", certainty->drawn().draws);
    return certainty;
}

} // namespace routeweigh::cli
