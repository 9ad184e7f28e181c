// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_check(CLI::App& program, Context& context) {
    const auto paths = std::make_shared<std::vector<std::string>>();
    CLI::App* command =
        program.add_subcommand("check", "Name every problem of route files, and nothing else");
    command->add_option("ROUTE", *paths, "Route files, folders of them, or - for standard input")->required();
    command->footer("Examples:\n"
                    "  routeweigh check my-route.json\n"
                    "      what is wrong with a file, with line and nearest spelling\n"
                    "  routeweigh check routes\n"
                    "      all route files of a folder and of those in it\n");
    return [paths, &context] {
        Problems problems;
        const std::vector<Route> routes = read_routes(read_sources(*paths), context.catalogue(), problems);
        print_problems(problems.all);
        write_file("-", fmt::format("{} route{} read, {} warning{}\n", routes.size(),
                                    routes.size() == 1 ? "" : "s", problems.all.size(),
                                    problems.all.size() == 1 ? "" : "s"));
    };
}

} // namespace routeweigh::cli
