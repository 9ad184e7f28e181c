// SPDX-License-Identifier: MIT
// The option of every command that says where waste goes: whose rules sort it.
#pragma once

#include "app/waste.hpp"
#include "cli/command.hpp"

#include <string>

namespace routeweigh::cli {

/// Where nothing else is said.
inline constexpr const char* usual_local_rules = "US";

/// Adds --rules. \param rules  has usual_local_rules in it; must outlive the command
void add_rules_option(CLI::App& command, std::string& rules);

/// The shipped rules by name, or those in a file. \throws FileError, CallError, InputError
streams::LocalRules local_rules_of(const std::string& name, Context& context);

} // namespace routeweigh::cli
