// SPDX-License-Identifier: MIT
#include "cli/commands/paper_options.hpp"

#include "cli/local_rules.hpp"
#include "cli/print_problems.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {
void PaperOptions::add_to(CLI::App& command) {
    command.add_option("ROUTE", route, "A route file, or - for standard input")->required();
    add_rules_option(command, rules);
}

std::unique_ptr<LaidOutRoute> PaperOptions::lay_out(Context& context) const {
    Problems problems;
    Route read = read_one_route(context.sources({route}), context.catalogue(), problems);
    print_problems(problems.all);
    return std::make_unique<LaidOutRoute>(std::move(read), context.rules(), context.catalogue(),
                                          local_rules_of(rules, context));
}

} // namespace routeweigh::cli
