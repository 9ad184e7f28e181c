// SPDX-License-Identifier: MIT
#include "documents/version.hpp"

namespace routeweigh {

std::string_view program_version() {
    return ROUTEWEIGH_VERSION;
}

} // namespace routeweigh
