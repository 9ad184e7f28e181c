// SPDX-License-Identifier: MIT
// Amounts as the findings print them: two or three significant digits, a unit that keeps the number short.
#pragma once

#include "chemistry/substance.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

std::string percent_words(double share);                               ///< 0.027 is "2.7 %"
std::string gram_words(double grams);                                  ///< "0.40 g", "12 mg"
std::string millimole_words(double moles);                             ///< "2.6 mmol"
std::string gas_words(double litres);                                  ///< "0.23 L" is "230 mL"
std::string liquid_words(double millilitres);                          ///< "1.44 L", "54 mL"
std::string names_of(const std::vector<const Substance*>& substances); ///< "a and b"

} // namespace routeweigh::streams
