// SPDX-License-Identifier: MIT
// Formulas: what is read can be written and read again, and weighs something.
#include "fuzz_driver.hpp"

#include "chemistry/element.hpp"
#include "chemistry/formula.hpp"

#include <cmath>

bool fuzz::try_input(std::string_view input) {
    using namespace routeweigh;
    Formula formula;
    try {
        formula = parse_formula(input);
    } catch (const FormulaError& error) {
        require(error.what()[0] != '\0' && error.position <= input.size(), "refused without a word or place");
        return false;
    }
    int last = 0;
    for (const auto& [element, count] : formula.atoms) {
        require(element > last && element <= element_count && count > 0,
                "atoms out of order or without count");
        last = element;
    }
    require(std::isfinite(molar_mass(formula)), "no finite molar mass");
    require(formula.atoms.empty() || molar_mass(formula) > 1.0, "lighter than hydrogen");
    if (!formula.atoms.empty())
        require(same_composition(parse_formula(hill_text(formula)), formula),
                "written and read again it is another");
    return true;
}
