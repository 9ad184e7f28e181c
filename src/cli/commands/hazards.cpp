// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/local_rules.hpp"
#include "cli/print_problems.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_hazards(CLI::App& program, Context& context) {
    const auto paths = std::make_shared<std::vector<std::string>>();
    CLI::App* command = program.add_subcommand(
        "hazards", "Every bottle and every stream of routes, classified and labelled, with the reasons");
    command->add_option("ROUTE", *paths, "Route files, folders of them, or - for standard input")->required();
    const auto limits = add_limits_options(*command);
    context.add_output_options(*command);
    command->footer("--working prints which ingredient, which limit and which sum stand behind each class.");
    return [paths, limits, &context] {
        Problems problems;
        const std::vector<Route> routes = read_routes(context.sources(*paths), context.catalogue(), problems);
        print_problems(problems.all);
        context.write(classify_routes(routes, context.catalogue(), jurisdiction_of(*limits, context)));
    };
}

} // namespace routeweigh::cli
