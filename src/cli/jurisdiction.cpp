// SPDX-License-Identifier: MIT
#include "cli/jurisdiction.hpp"

#include "cli/wrong_call.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>

namespace routeweigh::cli {

std::shared_ptr<JurisdictionChoice> add_jurisdiction_options(CLI::App& command) {
    auto choice = std::make_shared<JurisdictionChoice>();
    const auto known = [](const std::string& name) {
        const std::vector<std::string> all = jurisdiction_names();
        return std::find(all.begin(), all.end(), name) == all.end() ? no_such("jurisdiction", name, all)
                                                                    : std::string();
    };
    command
        .add_option(
            "--jurisdiction", choice->name,
            "Whose limits classify: eu (CLP, the default), un (globally harmonised system), us (OSHA)")
        ->check(known)
        ->type_name("NAME");
    command.add_option("--with", choice->with, "Building block of the UN system to switch on, by id")
        ->type_name("BLOCK");
    command.add_option("--without", choice->without, "Building block of the UN system to switch off, by id")
        ->type_name("BLOCK");
    return choice;
}

} // namespace routeweigh::cli
