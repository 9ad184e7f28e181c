// SPDX-License-Identifier: MIT
#include "cli/commands/paper_options.hpp"

#include "cli/files.hpp"
#include "cli/print_problems.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

void PaperOptions::add_to(CLI::App& command) {
    command.add_option("ROUTE", route, "A route file, or - for standard input")->required();
    command.add_option("--rules", rules, "Whose rules for labels and waste: US (default) or EU")
        ->type_name("NAME");
}

std::unique_ptr<LaidOutRoute> PaperOptions::lay_out(Context& context) const {
    Problems problems;
    Route read = read_one_route(context.sources({route}), context.catalogue(), problems);
    print_problems(problems.all);
    return std::make_unique<LaidOutRoute>(std::move(read), context.rules(), context.catalogue(), rules);
}

} // namespace routeweigh::cli
