// SPDX-License-Identifier: MIT
// Says what is wrong with a call, with the nearest command or option.
#pragma once

#include <string>

namespace CLI {
class App;
class ParseError;
} // namespace CLI

namespace routeweigh::cli {

/// One line. `program` has parsed the call as far as it could.
std::string explain_wrong_call(const CLI::App& program, const CLI::ParseError& error);

} // namespace routeweigh::cli
