// SPDX-License-Identifier: MIT
// Shares between 0 and 1 whose meaning is part of their type: a yield is no mass fraction and does not become
// one.
#pragma once

#include "base/quantity.hpp"

#include <compare>
#include <stdexcept>

namespace routeweigh {

template<typename Tag>
class Fraction {
  public:
    // Throws std::domain_error outside 0..1 (and for NaN).
    constexpr explicit Fraction(double value) : value_(value) {
        if (!(value >= 0 && value <= 1)) throw std::domain_error("a fraction must lie between 0 and 1");
    }

    static constexpr Fraction of_percent(double percent) { return Fraction(percent / 100); }

    constexpr double value() const { return value_; }
    constexpr double percent() const { return 100 * value_; }
    // What is missing to one.
    constexpr double rest() const { return 1 - value_; }

    friend constexpr bool operator==(Fraction a, Fraction b) { return a.value_ == b.value_; }
    friend constexpr std::partial_ordering operator<=>(Fraction a, Fraction b) {
        return a.value_ <=> b.value_;
    }

    template<Dimension D>
    friend constexpr Quantity<D> operator*(Fraction f, Quantity<D> q) {
        return f.value_ * q;
    }
    template<Dimension D>
    friend constexpr Quantity<D> operator*(Quantity<D> q, Fraction f) {
        return f.value_ * q;
    }

  private:
    double value_;
};

// Isolated product over theoretical product.
using Yield = Fraction<struct YieldTag>;
// Share of a reactant that a reaction uses up.
using Conversion = Fraction<struct ConversionTag>;
// Share of a component in the mass of a material.
using MassFraction = Fraction<struct MassFractionTag>;
// Share that a separation or a solvent recovery keeps.
using Recovery = Fraction<struct RecoveryTag>;

} // namespace routeweigh
