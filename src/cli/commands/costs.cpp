// SPDX-License-Identifier: MIT
#include "app/laid_out.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/costs_options.hpp"
#include "cli/print_problems.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_costs(CLI::App& program, Context& context) {
    struct Options : CostsOptions {
        std::string route;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "costs",
        "Time, energy, water and money of an experiment for a class, every assumption beside its number");
    command->add_option("ROUTE", options->route, "A route file, or - for standard input")->required();
    options->add_to(*command);
    command->footer(
        "Example:\n  routeweigh costs routes/4-bromoacetanilide/A3.json --students 12 --sections 2 \\\n"
        "      --session \"180 min\" --prices examples/prices.json --output costs.html");
    context.add_output_options(*command);
    return [options, &context] {
        Problems problems;
        Route route = read_one_route(context.sources({options->route}), context.catalogue(), problems);
        const Assessment assessment(std::move(route), context.rules());
        const auto document = costs_document(assessment, options->request(context), context.catalogue());
        print_problems(problems.all);
        context.write(document);
    };
}

} // namespace routeweigh::cli
