// SPDX-License-Identifier: MIT
#include "cli/local_rules.hpp"

#include "app/session.hpp"
#include "base/text.hpp"
#include "cli/files.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <algorithm>
#include <vector>

namespace routeweigh::cli {
namespace {

/// \param names  that would have done instead of a file
streams::LocalRules rules_in_file(const std::string& name, const std::vector<std::string>& names,
                                  Context& context) {
    try {
        return streams::read_local_rules(*context.source(name, "--rules"), context.catalogue());
    } catch (const FileError& error) {
        throw FileError(fmt::format("{}; --rules takes a file, or the rules shipped by the name of {}",
                                    error.what(), join(names, " or ")));
    }
}

} // namespace

void add_rules_option(CLI::App& command, std::string& rules) {
    command.add_option("--rules", rules, "Rules of your house for waste, or those shipped: US (default), EU")
        ->type_name("FILE");
}

streams::LocalRules local_rules_of(const std::string& name, Context& context) {
    for (const std::string& shipped : shipped_jurisdictions())
        if (fold(name) == fold(shipped)) return streams::shipped_local_rules(context.catalogue(), shipped);
    return rules_in_file(name, shipped_jurisdictions(), context);
}

std::shared_ptr<JurisdictionChoice> add_limits_options(CLI::App& command) {
    auto choice = std::make_shared<JurisdictionChoice>();
    command
        .add_option(
            "--rules", choice->name,
            "Whose limits classify: EU (CLP, the default), UN (globally harmonised system), US (OSHA), "
            "or those that hold by the rules of your house")
        ->type_name("FILE");
    command.add_option("--with", choice->with, "Building block of the UN system to switch on, by id")
        ->type_name("BLOCK");
    command.add_option("--without", choice->without, "Building block of the UN system to switch off, by id")
        ->type_name("BLOCK");
    return choice;
}

Jurisdiction jurisdiction_of(const JurisdictionChoice& choice, Context& context) {
    const std::vector<std::string> names = jurisdiction_names();
    JurisdictionChoice found = choice;
    const auto called = std::find_if(
        names.begin(), names.end(), [&](const std::string& name) { return fold(name) == fold(choice.name); });
    found.name =
        called != names.end() ? *called : jurisdiction_name(rules_in_file(choice.name, names, context));
    return chosen(found);
}

} // namespace routeweigh::cli
