// SPDX-License-Identifier: MIT
#include "app/found_yields.hpp"
#include "app/session.hpp"
#include "app/what_if.hpp"
#include "cli/commands/commands.hpp"
#include "cli/print_problems.hpp"
#include "cli/results_option.hpp"
#include "cli/within.hpp"
#include "documents/improvements_document.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

namespace routeweigh::cli {
namespace {

constexpr std::size_t paired = 8; // of the changes that are shown, so many are tried in pairs

struct ImproveOptions {
    std::string route, results, figure = "process_mass_intensity";
    std::size_t top = 6;
    bool student = false, key = false;
    ImprovementLimits limits;
    double quartile = 0.0; // per cent; 0: not given
    double recovery = 100.0 * ImprovementLimits{}.recovery;
};

void add_improve_options(CLI::App& command, ImproveOptions& options) {
    command.add_option("ROUTE", options.route, "A route file, or - for standard input")->required();
    command.add_option("--figure", options.figure, "Id of the figure to improve")
        ->capture_default_str()
        ->type_name("ID");
    command.add_option("--top", options.top, "How many are shown")
        ->capture_default_str()
        ->check(CLI::Range(1, 100))
        ->type_name("N");
    command.add_flag("--student", options.student,
                     "Questions to students, without numbers, from the levers of this route");
    command.add_flag("--key", options.key, "The questions with a worked key");
    command.add_option("--excess", options.limits.excess_floor, "Equivalents that a reactant keeps")
        ->capture_default_str()
        ->check(within(1.0, 10.0))
        ->type_name("EQ");
    command
        .add_option("--recovery", options.recovery, "Per cent of a solvent that a distillation gives back")
        ->capture_default_str()
        ->check(within(1.0, 100.0))
        ->type_name("%");
    command
        .add_option(
            "--results", options.results,
            "Isolated yields that were found, a list or the table of a class, in place of the stated yield: "
            "what if all reached their upper quartile?")
        ->type_name("[ID=]FILE");
    command.footer("Examples:\n"
                   "  routeweigh improve A3.json\n"
                   "      changes of A3 ranked by what they do for its mass\n"
                   "  routeweigh improve A3.json --figure hazard_score --top 3\n"
                   "  routeweigh improve A3.json --results class.csv\n"
                   "  routeweigh improve A3.json --student --output questions.html\n"
                   "  routeweigh improve A3.json --key --output key.html\n");
}

/// The route on what the class found, and its upper quartile as a limit.
Route on_results(ImproveOptions& options, Route route, Context& context) {
    Problems problems;
    std::vector<Route> alone;
    alone.push_back(std::move(route));
    const Comparison as_written = compare_routes(std::move(alone), "", context.rules());
    const std::vector<FoundYields> found = read_all_found({options.results}, as_written, problems);
    print_problems(problems.all);
    const auto last = static_cast<std::size_t>(as_written.baseline().flat().final_step());
    options.limits.upper_quartile[as_written.baseline().route().steps[last].id] =
        upper_quartile(found.front());
    Problems said_before;
    return std::move(
        read_routes(with_found_yields(as_written, found), context.catalogue(), said_before).front());
}

} // namespace

std::function<void()> add_improve(CLI::App& program, Context& context) {
    const auto options = std::make_shared<ImproveOptions>();
    CLI::App* command = program.add_subcommand(
        "improve", "Changes that would improve a route, each applied and computed, ranked by one figure");
    add_improve_options(*command, *options);
    context.add_output_options(*command);
    return [options, &context] {
        Problems problems;
        std::vector<Route> routes =
            read_routes(context.sources({options->route}), context.catalogue(), problems);
        if (routes.size() != 1) throw CallError("improve takes one route file");
        print_problems(problems.all);
        if (!options->results.empty())
            routes.front() = on_results(*options, std::move(routes.front()), context);
        const FigurePick figure = figure_named(options->figure, context.rules());
        if (figure.better() == Better::neither)
            throw CallError(
                fmt::format("{} is better neither low nor high, so nothing improves it", figure.id()));
        const Assessment assessment(std::move(routes.front()), context.rules());
        if (!std::isfinite(figure.value(assessment.values())))
            throw CallError(fmt::format("{} has no value for {}", figure.id(), assessment.route().id));
        options->limits.recovery = options->recovery / 100.0;
        const SolventRules solvents = read_solvent_rules(context.catalogue());
        const Improvements improvements =
            find_improvements({assessment, solvents, options->limits,
                               apply_to(assessment.route(), context.catalogue(), context.rules())},
                              figure, options->student || options->key ? 0 : std::min(paired, options->top));
        if (options->student || options->key)
            context.write(improvement_questions(assessment, improvements, options->top, options->key));
        else
            context.write(improvements_document(assessment, improvements, options->top));
    };
}

} // namespace routeweigh::cli
