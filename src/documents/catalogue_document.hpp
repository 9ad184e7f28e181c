// SPDX-License-Identifier: MIT
// What the catalogue knows of a text: substances and materials, each datum with its source.
#pragma once

#include "chemistry/catalogue.hpp"
#include "writing/blocks.hpp"

#include <string_view>

namespace routeweigh {

writing::Document catalogue_document(const Catalogue& catalogue, std::string_view text);

} // namespace routeweigh
