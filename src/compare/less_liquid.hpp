// SPDX-License-Identifier: MIT
// What less of the liquid that carries a stage may do to it, be it a solvent or a reactant in excess.
#pragma once

#include "compare/charge_place.hpp"

#include <string>
#include <vector>

namespace routeweigh {

/// " at 78 degC", or "" where the file gives no temperature.
std::string at_temperature(const Stage& stage);

/// No other liquid of its stage weighs more.
bool is_largest_liquid(const ChargePlace& place, const std::vector<ChargePlace>& all);

/// Solubility, heat and stirring. \param kept  share of the charge that stays, 0 to 1
std::vector<std::string> cautions_for_less_liquid(const ChargePlace& place,
                                                  const std::vector<ChargePlace>& all, double kept);

} // namespace routeweigh
