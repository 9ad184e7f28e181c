// SPDX-License-Identifier: MIT
// What the commands for the papers of the bench have in common.
#pragma once

#include "app/laid_out.hpp"
#include "cli/command.hpp"
#include "cli/local_rules.hpp"

#include <memory>
#include <string>

namespace routeweigh::cli {

struct PaperOptions {
    std::string route;
    std::string rules = usual_local_rules;

    /// Adds ROUTE and --rules.
    void add_to(CLI::App& command);
    /// The route read, its warnings printed.
    std::unique_ptr<LaidOutRoute> lay_out(Context& context) const;
};

} // namespace routeweigh::cli
