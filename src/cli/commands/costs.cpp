// SPDX-License-Identifier: MIT
#include "app/costs_session.hpp"
#include "cli/commands/class_options.hpp"
#include "cli/commands/commands.hpp"
#include "cli/local_rules.hpp"
#include "cli/print_problems.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_costs(CLI::App& program, Context& context) {
    struct Options {
        std::string route, prices, rules = usual_local_rules;
        CostsRequest request;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "costs",
        "Time, energy, water and money of an experiment for a class, every assumption beside its number");
    command->add_option("ROUTE", options->route, "A route file, or - for standard input")->required();
    add_class_options(*command, options->request.size);
    command->add_option("--session", options->request.session, "Length of one class, as \"180 min\"")
        ->type_name("TIME");
    command
        ->add_option("--prices", options->prices,
                     "Packs, disposal, power and water with their prices, see examples/prices.schema.json")
        ->type_name("FILE");
    add_rules_option(*command, options->rules);
    command->footer(
        "Example:\n  routeweigh costs routes/4-bromoacetanilide/A3.json --students 12 --sections 2 \\\n"
        "      --session \"180 min\" --prices examples/prices.json --output costs.html");
    context.add_output_options(*command);
    return [options, &context] {
        Problems problems;
        std::vector<Route> routes =
            read_routes(context.sources({options->route}), context.catalogue(), problems);
        if (routes.size() != 1) throw CallError("costs takes one route file");
        if (!options->prices.empty()) options->request.prices = context.sources({options->prices}).front();
        options->request.local = local_rules_of(options->rules, context);
        const Assessment assessment(std::move(routes.front()), context.rules());
        const auto document = costs_document(assessment, options->request, context.catalogue());
        print_problems(problems.all);
        context.write(document);
    };
}

} // namespace routeweigh::cli
