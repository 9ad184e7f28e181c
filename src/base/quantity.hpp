// SPDX-License-Identifier: MIT
// Physical quantities whose dimension is part of their type, so that a mass cannot be added to a volume.
//
// Built only as `2.5 * unit::g`, read only as `m.in(unit::mg)`. Inside, the value is kept in g, mol, mL, s, J
// and one unit of money. Equal dimensions divide to a plain double. A temperature is a point in degC, its own
// type.
#pragma once

#include <compare>

namespace routeweigh {

// The exponents of a quantity; volume and energy are kept as dimensions of their own (mL and J, not m and
// kg).
struct Dimension {
    int mass = 0;
    int amount = 0;
    int volume = 0;
    int time = 0;
    int energy = 0;
    int money = 0;

    friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
};

constexpr Dimension operator+(Dimension a, Dimension b) {
    return {a.mass + b.mass, a.amount + b.amount, a.volume + b.volume,
            a.time + b.time, a.energy + b.energy, a.money + b.money};
}

constexpr Dimension operator-(Dimension a, Dimension b) {
    return {a.mass - b.mass, a.amount - b.amount, a.volume - b.volume,
            a.time - b.time, a.energy - b.energy, a.money - b.money};
}

template<Dimension D>
class Quantity;

namespace detail {
template<Dimension D>
constexpr Quantity<D> scaled_unit(double in_base_units);
}

template<Dimension D>
class Quantity {
  public:
    // Zero.
    constexpr Quantity() = default;

    // The number of `unit`s in this quantity.
    constexpr double in(Quantity unit) const { return value_ / unit.value_; }

    constexpr Quantity operator-() const { return Quantity(-value_); }
    constexpr Quantity& operator+=(Quantity other) {
        value_ += other.value_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other) {
        value_ -= other.value_;
        return *this;
    }
    constexpr Quantity& operator*=(double factor) {
        value_ *= factor;
        return *this;
    }

    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
    friend constexpr Quantity operator*(double factor, Quantity q) { return Quantity(factor * q.value_); }
    friend constexpr Quantity operator*(Quantity q, double factor) { return Quantity(q.value_ * factor); }
    friend constexpr Quantity operator/(Quantity q, double divisor) { return Quantity(q.value_ / divisor); }
    friend constexpr bool operator==(Quantity a, Quantity b) { return a.value_ == b.value_; }
    friend constexpr std::partial_ordering operator<=>(Quantity a, Quantity b) {
        return a.value_ <=> b.value_;
    }

    template<Dimension E>
    constexpr auto operator*(Quantity<E> other) const {
        if constexpr (D + E == Dimension{})
            return value_ * other.value_;
        else
            return Quantity<D + E>(value_ * other.value_);
    }

    template<Dimension E>
    constexpr auto operator/(Quantity<E> other) const {
        if constexpr (D == E)
            return value_ / other.value_;
        else
            return Quantity<D - E>(value_ / other.value_);
    }

  private:
    template<Dimension>
    friend class Quantity;
    friend constexpr Quantity detail::scaled_unit<D>(double in_base_units);

    constexpr explicit Quantity(double value) : value_(value) {}

    double value_ = 0;
};

namespace detail {
template<Dimension D>
constexpr Quantity<D> scaled_unit(double in_base_units) {
    return Quantity<D>(in_base_units);
}
} // namespace detail

using Mass = Quantity<Dimension{.mass = 1}>;
using Amount = Quantity<Dimension{.amount = 1}>;
using Volume = Quantity<Dimension{.volume = 1}>;
using Duration = Quantity<Dimension{.time = 1}>;
using Energy = Quantity<Dimension{.energy = 1}>;
using Power = Quantity<Dimension{.time = -1, .energy = 1}>;
using MolarMass = Quantity<Dimension{.mass = 1, .amount = -1}>;
using Density = Quantity<Dimension{.mass = 1, .volume = -1}>;

namespace unit {
inline constexpr Mass g = detail::scaled_unit<Dimension{.mass = 1}>(1);
inline constexpr Mass ug = detail::scaled_unit<Dimension{.mass = 1}>(1e-6);
inline constexpr Mass mg = detail::scaled_unit<Dimension{.mass = 1}>(1e-3);
inline constexpr Mass kg = detail::scaled_unit<Dimension{.mass = 1}>(1e3);
inline constexpr Mass tonne = detail::scaled_unit<Dimension{.mass = 1}>(1e6);

inline constexpr Amount mol = detail::scaled_unit<Dimension{.amount = 1}>(1);
inline constexpr Amount umol = detail::scaled_unit<Dimension{.amount = 1}>(1e-6);
inline constexpr Amount mmol = detail::scaled_unit<Dimension{.amount = 1}>(1e-3);
inline constexpr Amount kmol = detail::scaled_unit<Dimension{.amount = 1}>(1e3);

inline constexpr Volume mL = detail::scaled_unit<Dimension{.volume = 1}>(1);
inline constexpr Volume uL = detail::scaled_unit<Dimension{.volume = 1}>(1e-3);
inline constexpr Volume L = detail::scaled_unit<Dimension{.volume = 1}>(1e3);
inline constexpr Volume m3 = detail::scaled_unit<Dimension{.volume = 1}>(1e6);

inline constexpr Duration s = detail::scaled_unit<Dimension{.time = 1}>(1);
inline constexpr Duration min = detail::scaled_unit<Dimension{.time = 1}>(60);
inline constexpr Duration h = detail::scaled_unit<Dimension{.time = 1}>(3600);
inline constexpr Duration day = detail::scaled_unit<Dimension{.time = 1}>(86400);

inline constexpr Energy J = detail::scaled_unit<Dimension{.energy = 1}>(1);
inline constexpr Energy kJ = detail::scaled_unit<Dimension{.energy = 1}>(1e3);
inline constexpr Energy MJ = detail::scaled_unit<Dimension{.energy = 1}>(1e6);
inline constexpr Energy Wh = detail::scaled_unit<Dimension{.energy = 1}>(3600);
inline constexpr Energy kWh = detail::scaled_unit<Dimension{.energy = 1}>(3.6e6);

inline constexpr Power W = J / s;
inline constexpr Power kW = kJ / s;

inline constexpr MolarMass g_per_mol = g / mol;
inline constexpr Density g_per_mL = g / mL;
} // namespace unit

// A point on the Celsius scale, not a difference: it can be compared, and not added.
class Temperature {
  public:
    static constexpr Temperature from_celsius(double degrees) { return Temperature(degrees); }
    static constexpr Temperature from_kelvin(double kelvin) { return Temperature(kelvin - 273.15); }

    constexpr double celsius() const { return celsius_; }
    constexpr double kelvin() const { return celsius_ + 273.15; }

    friend constexpr bool operator==(Temperature a, Temperature b) { return a.celsius_ == b.celsius_; }
    friend constexpr std::partial_ordering operator<=>(Temperature a, Temperature b) {
        return a.celsius_ <=> b.celsius_;
    }

  private:
    constexpr explicit Temperature(double celsius) : celsius_(celsius) {}

    double celsius_;
};

} // namespace routeweigh
