// SPDX-License-Identifier: MIT
// Chemical formulas: atoms and charge read from text such as "Ca(OH)2", "CuSO4.5H2O", "SO4^2-", "NH4+".
//
// Round and square brackets nest. A dot or middle dot joins the parts of a hydrate or adduct, a number before
// a part multiplies it. A charge stands at the end, after "^" where a digit goes with it; what could be read
// in two ways
// ("Fe3+") is refused.
#pragma once

#include "chemistry/element.hpp"

#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace routeweigh {

struct Formula {
    std::vector<std::pair<int, int>> atoms; // atomic number and count (at least 1), by atomic number
    int charge = 0;                         // in elementary charges
    std::string text;                       // as written

    // The same atoms and charge, however written.
    friend bool same_composition(const Formula& a, const Formula& b) {
        return a.charge == b.charge && a.atoms == b.atoms;
    }
};

class FormulaError : public std::runtime_error {
  public:
    // `position` is the byte, counted from 0, at which reading stopped; the message counts from 1.
    FormulaError(const std::string& message, std::size_t position_)
        : std::runtime_error(message), position(position_) {}

    std::size_t position;
};

// Throws FormulaError, also for an element without a standard atomic weight.
Formula parse_formula(std::string_view text);

// g/mol; the mass of the electrons of a charge is not taken off.
double molar_mass(const Formula& formula, const AtomicWeights& weights = {});

// Count of one element, 0 where it is absent.
int atoms_of(const Formula& formula, int element);

// "C8H8BrNO": carbon, hydrogen, then by symbol; by symbol alone without carbon. With the charge, if any,
// after "^".
std::string hill_text(const Formula& formula);

} // namespace routeweigh
