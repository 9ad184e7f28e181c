// SPDX-License-Identifier: MIT
// Reads what a stage says of how fast one of its substances is made and used up.
#pragma once

#include "chemistry/catalogue.hpp"
#include "input/field.hpp"
#include "route/route.hpp"

namespace routeweigh {

/// \param stage  its charges and reactions have been read
Kinetics read_kinetics(const Field& field, const Stage& stage, const Catalogue& catalogue);

} // namespace routeweigh
