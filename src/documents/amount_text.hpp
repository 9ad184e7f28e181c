// SPDX-License-Identifier: MIT
// Amounts of a material as one takes them: liquids in mL, all else in g.
#pragma once

#include "chemistry/material.hpp"

#include <string>

namespace routeweigh::documents {

/// "1.14 L", "40.0 mL", "107 g", "2.35 kg": three significant digits.
std::string amount_text(double grams, const Material& material);

std::string grams_text(double grams);             ///< "107 g", "2.35 kg", "12.0 mg"
std::string millilitres_text(double millilitres); ///< "40.0 mL", "1.14 L"

} // namespace routeweigh::documents
