// SPDX-License-Identifier: MIT
// The options that say whose limits decide a classification: --jurisdiction, --with and --without.
#pragma once

#include "assess/classified_route.hpp"

#include <memory>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace routeweigh::cli {

struct JurisdictionOptions {
    std::string name = "eu";
    std::vector<std::string> with, without; ///< ids of building blocks of the UN

    /// \throws CallError where a block is switched both ways, or a jurisdiction without blocks is given one
    Jurisdiction chosen() const;
};

/// Adds the options to a command; what they are set to is known after parsing.
std::shared_ptr<JurisdictionOptions> add_jurisdiction_options(CLI::App& command);

} // namespace routeweigh::cli
