// SPDX-License-Identifier: MIT
// Manual page and shell completion, both made from the declared commands and options, so that neither can
// drift.
#pragma once

#include <string>

namespace CLI {
class App;
}

namespace routeweigh::cli {

/// In the man macros of roff, section 1.
std::string manual_page(const CLI::App& program, const std::string& version);

/// For bash: names of commands, options and formats; files otherwise.
std::string bash_completion(const CLI::App& program);

} // namespace routeweigh::cli
