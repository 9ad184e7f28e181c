// SPDX-License-Identifier: MIT
// An equation with its coefficients, or why it has none.
#pragma once

#include "chemistry/catalogue.hpp"
#include "writing/blocks.hpp"

#include <string_view>

namespace routeweigh {

/// Terms are formulas or names of the catalogue.
/// \throws InputError when the text is no equation, or a term is neither
writing::Document balance_document(std::string_view equation, const Catalogue& catalogue);

} // namespace routeweigh
