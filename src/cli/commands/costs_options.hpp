// SPDX-License-Identifier: MIT
// What the commands ask that cost an experiment for a class: its size, session, prices and rules.
#pragma once

#include "app/costs_session.hpp"
#include "cli/local_rules.hpp"

#include <string>

namespace routeweigh::cli {

struct CostsOptions {
    ClassRequest size;
    std::string session, prices, rules = usual_local_rules;

    /// Adds --students, --sections, --extra, --day, --session, --prices and --rules. Must outlive the
    /// command.
    void add_to(CLI::App& command);

    /// The files read. \throws FileError, CallError, InputError
    CostsRequest request(Context& context) const;
};

} // namespace routeweigh::cli
