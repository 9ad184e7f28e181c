// SPDX-License-Identifier: MIT
// --students, --sections, --extra and --day, for every command that plans for a class.
#pragma once

#include "app/class_request.hpp"

namespace CLI {
class App;
}

namespace routeweigh::cli {

void add_class_options(CLI::App& command, ClassRequest& size);

} // namespace routeweigh::cli
