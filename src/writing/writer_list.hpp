// SPDX-License-Identifier: MIT
// The writers by name, in the order in which help lists them.
#pragma once

#include "writing/writer.hpp"

#include <span>
#include <string_view>

namespace routeweigh::writing {

std::span<const Writer> writer_list();

/// Null when there is no writer of this name.
const Writer* find_writer(std::string_view name);

} // namespace routeweigh::writing
