// SPDX-License-Identifier: MIT
#include "cli/commands/costs_options.hpp"

#include "cli/commands/class_options.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

void CostsOptions::add_to(CLI::App& command) {
    add_class_options(command, size);
    command.add_option("--session", session, "Length of one class, as \"180 min\"")->type_name("TIME");
    command
        .add_option("--prices", prices,
                    "Packs, disposal, power and water with their prices, see examples/prices.schema.json")
        ->type_name("FILE");
    add_rules_option(command, rules);
}

CostsRequest CostsOptions::request(Context& context) const {
    return {size, session, local_rules_of(rules, context),
            prices.empty() ? nullptr : context.source(prices, "--prices")};
}

} // namespace routeweigh::cli
