// SPDX-License-Identifier: MIT
// Does the amount that the source gave ("given_as") still fit the amount of the charge?
#pragma once

#include "route/route.hpp"

#include <string>

namespace routeweigh {

/// In words what differs: "10.00 mmol is 1.352 g, and the amount is 1.500 g". Empty where both are the same
/// within 1 % (equivalents and mol %: or within their last digit), and where they cannot be compared: "six
/// equivalents", "a little", moles of a mixture. \param reference  mol, from reference_moles; NaN when the
/// step has none
std::string given_amount_fault(const Charge& charge, double reference);

} // namespace routeweigh
