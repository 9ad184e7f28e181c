// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "app/what_if.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"
#include "documents/comparison_report.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_compare(CLI::App& program, Context& context) {
    struct Options {
        std::vector<std::string> routes;
        std::string baseline;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand("compare", "Weigh routes to one product against each other");
    command->add_option("ROUTE", options->routes, "Route files, folders of them, or - for standard input")
        ->required();
    command
        ->add_option("--baseline", options->baseline,
                     "Id of the route that the others are compared with; else the first")
        ->type_name("ID");
    context.add_output_options(*command);
    return [options, &context] {
        Problems problems;
        std::vector<Route> routes =
            read_routes(context.sources(options->routes), context.catalogue(), problems);
        print_problems(problems.all);
        const Comparison comparison = compare_routes(std::move(routes), options->baseline, context.rules());
        std::vector<Improvements> improvements; // programs ask for them with a command of their own
        const bool people = context.writer().reader == writing::Reader::people;
        if (people) improvements = improvements_of(comparison, context.catalogue(), context.rules());
        context.write(
            comparison_report(comparison, context.writer().reader, people ? &improvements : nullptr));
    };
}

} // namespace routeweigh::cli
