// SPDX-License-Identifier: MIT
#include "compare/deadly.hpp"

#include "assess/hazard/statement.hpp"

namespace routeweigh {

std::string fatal_statement(const Substance& substance) {
    for (const GhsEntry& entry : substance.ghs)
        if (const int number = statement_number(entry.statement);
            number == 300 || number == 310 || number == 330)
            return entry.statement;
    return "";
}

std::string gas_with_acid_statement(const Substance& substance) {
    for (const std::string& statement : substance.supplemental)
        if (statement == "EUH031" || statement == "EUH032") return statement;
    return "";
}

} // namespace routeweigh
