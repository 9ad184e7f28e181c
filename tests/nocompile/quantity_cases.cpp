// SPDX-License-Identifier: MIT
// Each case but 0 must be refused by the compiler: what does not mix in chemistry does not mix in the types.
#include "base/fraction.hpp"
#include "base/known.hpp"
#include "base/quantity.hpp"

namespace routeweigh {

inline Mass takes_mass(Mass mass) {
    return mass;
}
inline Yield takes_yield(Yield yield) {
    return yield;
}

inline void cases() {
    Mass mass = 1.0 * unit::g;
    Volume volume = 1.0 * unit::mL;
    MassFraction fraction(0.5);
    Temperature warm = Temperature::from_celsius(20);
    Known<double> known = 1.0;
#if CASE == 0 // the control: all of this is right
    mass += takes_mass(volume * (1.0 * unit::g_per_mL));
    static_cast<void>(takes_yield(Yield(fraction.value())) == Yield(1));
    static_cast<void>(warm > Temperature::from_kelvin(0));
    static_cast<void>(known.value() + mass.in(unit::g));
#elif CASE == 1  // a mass and a volume have no sum
    mass + volume;
#elif CASE == 2  // a bare number is no mass
    mass = 2.5;
#elif CASE == 3  // a mass is no bare number
    double grams = mass;
#elif CASE == 4  // grams cannot be read as millilitres
    mass.in(unit::mL);
#elif CASE == 5  // a mass fraction is no yield
    takes_yield(fraction);
#elif CASE == 6  // a bare number is no yield
    takes_yield(0.8);
#elif CASE == 7  // shares of different meaning do not compare
    fraction == Yield(0.5);
#elif CASE == 8  // points of temperature have no sum
    warm + warm;
#elif CASE == 9  // a temperature is no bare number
    warm > 20.0;
#elif CASE == 10 // an amount of substance is no mass
    takes_mass(1.0 * unit::mol);
#elif CASE == 11 // what may be missing is not read as a number
    double value = known;
#elif CASE == 12 // no quantity is made without a unit
    Mass bare(2.5);
#elif CASE == 13 // a mass and a volume do not compare
    mass < volume;
#endif
}

} // namespace routeweigh
