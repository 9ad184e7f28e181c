// SPDX-License-Identifier: MIT
#include "app/what_if.hpp"
#include "cli/commands/commands.hpp"
#include "cli/print_problems.hpp"
#include "documents/break_even_document.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <cmath>
#include <memory>
#include <optional>
#include <utility>

namespace routeweigh::cli {
namespace {

struct BreakEvenOptions {
    std::string route, baseline, figure = "process_mass_intensity", input;
    std::optional<double> target;
};

/// The route to be equal to; nullptr where a number is given instead.
std::unique_ptr<Assessment> read_baseline(const BreakEvenOptions& options, const Route& route,
                                          Context& context) {
    if (options.target && !std::isfinite(*options.target))
        throw CallError("--target takes a finite number, which no nan and nothing beyond 1.8e308 is");
    if (options.baseline.empty()) {
        if (!options.target) throw CallError("name the route to be equal to, or a number with --target");
        return nullptr;
    }
    if (options.target) throw CallError("name a route or give --target, not both");
    Problems problems;
    std::vector<Route> routes =
        read_routes(context.sources({options.baseline}), context.catalogue(), problems);
    if (routes.size() != 1) throw CallError("break-even compares with one route");
    if (routes.front().product != route.product)
        throw CallError(fmt::format("{} makes {}, {} makes {}: only routes to one product can be compared",
                                    route.id, route.product->name, routes.front().id,
                                    routes.front().product->name));
    return std::make_unique<Assessment>(std::move(routes.front()), context.rules());
}

FigurePick figure_of(const std::string& id, const Assessment& route, const Assessment* baseline,
                     Context& context) {
    if (id != same_auxiliaries_id) return figure_named(id, context.rules());
    if (baseline == nullptr)
        throw CallError(fmt::format("\"{}\" is counted against another route: name it as BASELINE", id));
    return FigurePick::same_auxiliaries(route.flat(), *baseline);
}

} // namespace

std::function<void()> add_break_even(CLI::App& program, Context& context) {
    const auto options = std::make_shared<BreakEvenOptions>();
    CLI::App* command = program.add_subcommand(
        "break-even", "At which value of an input a figure of a route equals that of another route");
    command->add_option("ROUTE", options->route, "The route whose inputs are varied")->required();
    command->add_option("BASELINE", options->baseline, "The route whose figure is to be met");
    command
        ->add_option("--figure", options->figure,
                     fmt::format("Id of the figure; {} is counted against BASELINE", same_auxiliaries_id))
        ->capture_default_str()
        ->type_name("ID");
    command
        ->add_option("--input", options->input,
                     "Only this input, with a curve: a JSON pointer or a name, such as yield; else all")
        ->type_name("PLACE");
    command->add_option("--target", options->target, "A number in place of BASELINE")->type_name("VALUE");
    command->footer(
        "Examples:\n"
        "  routeweigh break-even A3.json A1.json\n"
        "      every input, and where it would make the mass of A3 that of A1\n"
        "  routeweigh break-even A3.json A1.json --figure hazard_score --input yield\n"
        "  routeweigh break-even A3.json --target 40 --input /steps/0/stages/1/charges/0/amount\n");
    context.add_output_options(*command);
    return [options, &context] {
        Problems problems;
        std::vector<Route> routes =
            read_routes(context.sources({options->route}), context.catalogue(), problems);
        if (routes.size() != 1) throw CallError("break-even takes one route file");
        print_problems(problems.all);
        const Assessment assessment(std::move(routes.front()), context.rules());
        const Route& route = assessment.route();
        const auto baseline = read_baseline(*options, route, context);
        const auto figure_for = [&](const Assessment& one) {
            return figure_of(options->figure, one, baseline.get(), context);
        };
        const FigurePick figure = figure_for(assessment);
        const std::string target_id = baseline ? baseline->route().id : "";
        const double target = baseline ? figure_for(*baseline).value(baseline->values()) : *options->target;
        for (const double value : {figure.value(assessment.values()), target})
            if (!std::isfinite(value))
                throw CallError(fmt::format("{} has no value for {}", figure.id(),
                                            std::isfinite(target) ? route.id : target_id));
        std::vector<NumericInput> inputs = numeric_inputs(route);
        if (!options->input.empty()) {
            Problems of_name;
            inputs = {input_named(route, options->input, of_name)};
            print_problems(of_name.all);
        }
        const Apply apply = apply_to(route, context.catalogue(), context.rules());
        std::vector<BreakEvenAnswer> answers;
        for (const NumericInput& input : inputs)
            answers.push_back(answer_break_even(assessment, input, figure, target, apply));
        context.write(break_even_document({&assessment, figure, target, target_id}, answers));
    };
}

} // namespace routeweigh::cli
