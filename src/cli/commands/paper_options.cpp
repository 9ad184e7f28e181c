// SPDX-License-Identifier: MIT
#include "cli/commands/paper_options.hpp"

#include "app/waste.hpp"
#include "base/text.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

namespace routeweigh::cli {
namespace {

streams::LocalRules local_rules_of(const std::string& name, Context& context) {
    if (auto shipped = local_rules(context.catalogue(), name)) return std::move(*shipped);
    try {
        const std::vector<SourcePtr> files = context.sources({name});
        if (files.size() != 1) throw CallError("--rules takes one file, not a folder");
        return local_rules(context.catalogue(), *files.front());
    } catch (const FileError& error) {
        throw FileError(fmt::format("{}; --rules takes a file, or the rules shipped by the name of {}",
                                    error.what(), join(shipped_jurisdictions(), " or ")));
    }
}

} // namespace

void PaperOptions::add_to(CLI::App& command) {
    command.add_option("ROUTE", route, "A route file, or - for standard input")->required();
    command.add_option("--rules", rules, "Rules of your house, or those shipped: US (default), EU")
        ->type_name("FILE");
}

std::unique_ptr<LaidOutRoute> PaperOptions::lay_out(Context& context) const {
    Problems problems;
    Route read = read_one_route(context.sources({route}), context.catalogue(), problems);
    print_problems(problems.all);
    return std::make_unique<LaidOutRoute>(std::move(read), context.rules(), context.catalogue(),
                                          local_rules_of(rules, context));
}

} // namespace routeweigh::cli
