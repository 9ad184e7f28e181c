// SPDX-License-Identifier: MIT
// The version of the program that made a document.
#pragma once

#include <string_view>

namespace routeweigh {

std::string_view program_version();

} // namespace routeweigh
