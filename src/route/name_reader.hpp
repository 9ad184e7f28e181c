// SPDX-License-Identifier: MIT
// Finds what a route file names in the catalogue, and says of a name that is none what it may have meant.
#pragma once

#include "chemistry/catalogue.hpp"
#include "input/field.hpp"

#include <string_view>

namespace routeweigh {

/// A substance by the name that stands at, or in, the field. Unknown: a problem there and nullptr.
const Substance* find_named(const Field& field, std::string_view name, const Catalogue& catalogue);

/// The substance that the text of the field names.
const Substance* read_substance(const Field& field, const Catalogue& catalogue);

/// The material that the text of the field names; every substance is one.
const Material* read_material(const Field& field, const Catalogue& catalogue);

} // namespace routeweigh
