// SPDX-License-Identifier: MIT
// Of which substances a little is enough to kill, by their classification.
#pragma once

#include "chemistry/substance.hpp"

#include <string>

namespace routeweigh {

/// "H330": the first statement by which it is fatal (H300, H310, H330); "" for none.
std::string fatal_statement(const Substance& substance);
/// "EUH032": the statement by which acid frees a toxic gas from it (EUH031, EUH032); "" for none.
std::string gas_with_acid_statement(const Substance& substance);

} // namespace routeweigh
