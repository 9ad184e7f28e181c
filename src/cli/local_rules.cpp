// SPDX-License-Identifier: MIT
#include "cli/local_rules.hpp"

#include "app/session.hpp"
#include "base/text.hpp"
#include "cli/files.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

void add_rules_option(CLI::App& command, std::string& rules) {
    command.add_option("--rules", rules, "Rules of your house for waste, or those shipped: US (default), EU")
        ->type_name("FILE");
}

streams::LocalRules local_rules_of(const std::string& name, Context& context) {
    for (const std::string& shipped : shipped_jurisdictions())
        if (fold(name) == fold(shipped)) return streams::shipped_local_rules(context.catalogue(), shipped);
    try {
        const std::vector<SourcePtr> files = context.sources({name});
        if (files.size() != 1) throw CallError("--rules takes one file, not a folder");
        return streams::read_local_rules(*files.front(), context.catalogue());
    } catch (const FileError& error) {
        throw FileError(fmt::format("{}; --rules takes a file, or the rules shipped by the name of {}",
                                    error.what(), join(shipped_jurisdictions(), " or ")));
    }
}

} // namespace routeweigh::cli
