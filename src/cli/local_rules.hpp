// SPDX-License-Identifier: MIT
// The option of every command that sorts waste or classifies: whose rules hold. Waste is sorted by the rules
// of a house or a jurisdiction, a classification follows the limits of its jurisdiction.
#pragma once

#include "app/classification.hpp"
#include "app/waste.hpp"
#include "cli/command.hpp"

#include <memory>
#include <string>

namespace routeweigh::cli {

/// Adds --rules. \param rules  has usual_local_rules in it; must outlive the command
void add_rules_option(CLI::App& command, std::string& rules);

/// The shipped rules by name, or those in a file. \throws FileError, CallError, InputError
streams::LocalRules local_rules_of(const std::string& name, Context& context);

/// Adds --rules, --with and --without to a command that classifies; what they are set to is known after
/// parsing.
std::shared_ptr<JurisdictionChoice> add_limits_options(CLI::App& command);

/// The jurisdiction by name, or that of the rules in a file. \throws FileError, CallError, InputError
Jurisdiction jurisdiction_of(const JurisdictionChoice& choice, Context& context);

} // namespace routeweigh::cli
