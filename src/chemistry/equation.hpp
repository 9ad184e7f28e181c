// SPDX-License-Identifier: MIT
// Reaction equations as text, whether they balance, and which coefficients would balance them.
//
// Balancing is exact: the null space of the element matrix (and of the charges, where there are any) in
// rational numbers. An equation is balanced by positive coefficients only.
#pragma once

#include "chemistry/formula.hpp"

#include <cstdint>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct EquationTerm {
    std::int64_t coefficient = 1; // at least 1
    std::string name;             // as written: a name or a formula
};

struct Equation {
    std::vector<EquationTerm> left;
    std::vector<EquationTerm> right;
    std::string text; // as written
};

class EquationError : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

// Terms joined by " + ", sides by "->", its sign or " = ", a whole coefficient before a term with a space
// between. Throws EquationError.
Equation parse_equation(std::string_view text);

// "2 hydrogen peroxide -> 2 water + oxygen".
std::string format_equation(const Equation& equation);

// An element that does not come out even ("charge" for the sum of the charges), with its count on either
// side.
struct ElementDifference {
    std::string element;
    std::int64_t left = 0;
    std::int64_t right = 0;
};

// Empty for a balanced equation. One formula a term, in the order of the terms.
std::vector<ElementDifference> imbalance(const Equation& equation, std::span<const Formula> left,
                                         std::span<const Formula> right);

// "C 6 on the left, 7 on the right; H ...".
std::string format_imbalance(const std::vector<ElementDifference>& differences);

struct Balance {
    enum class Outcome { unique, not_unique, impossible };

    Outcome outcome = Outcome::impossible;
    // How many independent ways there are of balancing the equation: 1 where unique.
    int dimension = 0;
    // That many independent solutions, none with a negative coefficient, whole and without common divisor;
    // the terms of the left side first. Where unique, all coefficients are positive; where not, a 0 says that
    // the term is no part of that reaction, and every sum of them is a solution too.
    std::vector<std::vector<std::int64_t>> solutions;
    // Impossible: the elements (symbols, or "charge") that stand on one side only.
    std::vector<std::string> left_only, right_only;
    // Impossible, though no element stands alone: the terms (left side first) that no balanced equation can
    // contain with a positive coefficient on their side.
    std::vector<std::size_t> never;
    // Impossible: the reason in words; "" otherwise.
    std::string reason;
};

// At least one formula on either side, at most 100 together; throws EquationError otherwise, or where a
// coefficient would have more than 9 digits.
Balance balance(std::span<const Formula> left, std::span<const Formula> right);

} // namespace routeweigh
