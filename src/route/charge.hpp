// SPDX-License-Identifier: MIT
// From an amount as written to grams of the material.
#pragma once

#include "route/route.hpp"

namespace routeweigh {

/// What went wrong with one amount, for a message at its place.
struct ChargeError {
    std::string message;
};

/// Moles of the reference substance that are charged into the step in grams, millilitres or moles; "eq" and
/// "mol %" refer to this amount. \throws ChargeError when there are none or they are themselves given in
/// equivalents
double reference_moles(const Step& step);

/// Grams of the material. Millilitres go through its density, moles through its mass fraction; nothing is
/// guessed. \param reference  mol, from reference_moles; NaN when the step has none \throws ChargeError a
/// volume without density, a unit that is no amount, moles of a mixture without `of`
double grams_of(const Charge& charge, double reference);

} // namespace routeweigh
