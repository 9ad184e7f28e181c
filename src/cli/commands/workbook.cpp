// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"
#include "cli/xlsx_file.hpp"
#include "documents/route_workbook.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_workbook(CLI::App& program, Context& context) {
    struct Options {
        std::string route;
        int students = 24;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "workbook",
        "One route as a spreadsheet (.xlsx) in which yields, solvents and class size may be changed");
    command->add_option("ROUTE", options->route, "A route file, or - for standard input")->required();
    command->add_option("--output", context.output, "The .xlsx file to write")->required()->type_name("FILE");
    command->add_option("--students", options->students, "Runs of the route that the stock sheet starts from")
        ->check(CLI::Range(1, 100000))
        ->type_name("N");
    command->footer(
        "Example:\n  routeweigh workbook routes/4-bromoacetanilide/A3.json --students 24 --output A3.xlsx");
    return [options, &context] {
        Problems problems;
        std::vector<Route> routes =
            read_routes(context.sources({options->route}), context.catalogue(), problems);
        if (routes.size() != 1) throw CallError("workbook takes one route file");
        print_problems(problems.all);
        const Assessment assessment(std::move(routes.front()), context.rules());
        write_file(context.output, xlsx_bytes(route_workbook(assessment, options->students)));
    };
}

} // namespace routeweigh::cli
