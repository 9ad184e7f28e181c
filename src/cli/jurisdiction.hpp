// SPDX-License-Identifier: MIT
// The options that say whose limits decide a classification: --jurisdiction, --with and --without.
#pragma once

#include "app/classification.hpp"

#include <memory>

namespace CLI {
class App;
}

namespace routeweigh::cli {

/// Adds the options to a command; what they are set to is known after parsing.
std::shared_ptr<JurisdictionChoice> add_jurisdiction_options(CLI::App& command);

} // namespace routeweigh::cli
