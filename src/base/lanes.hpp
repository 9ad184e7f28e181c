// SPDX-License-Identifier: MIT
// Eight numbers side by side, such as the same mass in eight draws: one instruction does the arithmetic of
// several.
//
// What is evaluated often is written once, for a Number that is `double` or `Lanes`. Every lane goes through
// the same IEEE operations in the same order as a double would, so both give the same bits. Where a double
// would branch, lanes choose, or ask whether all of them agree on the branch (see `agree`).
#pragma once

#include <array>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <cstring>

namespace routeweigh {

inline constexpr std::size_t lane_count = 8;

namespace lanes {
// As wide as every machine of this kind computes at once; the compilers that we use all know this attribute.
inline constexpr std::size_t width = 2, parts = lane_count / width;
using Pair = double __attribute__((vector_size(width * sizeof(double))));
using PairMask = decltype(Pair{} < Pair{});
} // namespace lanes

/// Answer to a comparison, one a lane.
struct LaneMask {
    std::array<lanes::PairMask, lanes::parts> part;

    [[gnu::always_inline]] friend LaneMask operator&(LaneMask a, const LaneMask& b) {
        for (std::size_t p = 0; p < lanes::parts; ++p)
            a.part[p] = a.part[p] & b.part[p];
        return a;
    }
    [[gnu::always_inline]] friend LaneMask operator|(LaneMask a, const LaneMask& b) {
        for (std::size_t p = 0; p < lanes::parts; ++p)
            a.part[p] = a.part[p] | b.part[p];
        return a;
    }
    bool all() const {
        lanes::PairMask both = part[0];
        for (const lanes::PairMask& pair : part)
            both &= pair;
        return (both[0] & both[1]) != 0;
    }
    bool none() const {
        lanes::PairMask either = part[0];
        for (const lanes::PairMask& pair : part)
            either |= pair;
        return (either[0] | either[1]) == 0;
    }
};

struct Lanes {
    std::array<lanes::Pair, lanes::parts> part;

    Lanes() = default;
    /// The same number in every lane.
    Lanes(double value) { // NOLINT(google-explicit-constructor): a number is a number
        for (lanes::Pair& pair : part)
            pair = lanes::Pair{value, value};
    }
    /// \pre as many numbers as there are lanes
    static Lanes load(const double* from) {
        Lanes result;
        std::memcpy(&result.part, from, sizeof result.part);
        return result;
    }
    double operator[](std::size_t lane) const { return part[lane / lanes::width][lane % lanes::width]; }
    void set(std::size_t lane, double value) { part[lane / lanes::width][lane % lanes::width] = value; }

    [[gnu::always_inline]] Lanes& operator+=(const Lanes& b) { return *this = *this + b; }
    [[gnu::always_inline]] Lanes& operator-=(const Lanes& b) { return *this = *this - b; }
    [[gnu::always_inline]] Lanes& operator*=(const Lanes& b) { return *this = *this * b; }

    [[gnu::always_inline]] friend Lanes operator+(Lanes a, const Lanes& b) {
        for (std::size_t p = 0; p < lanes::parts; ++p)
            a.part[p] += b.part[p];
        return a;
    }
    [[gnu::always_inline]] friend Lanes operator-(Lanes a, const Lanes& b) {
        for (std::size_t p = 0; p < lanes::parts; ++p)
            a.part[p] -= b.part[p];
        return a;
    }
    [[gnu::always_inline]] friend Lanes operator*(Lanes a, const Lanes& b) {
        for (std::size_t p = 0; p < lanes::parts; ++p)
            a.part[p] *= b.part[p];
        return a;
    }
    [[gnu::always_inline]] friend Lanes operator/(Lanes a, const Lanes& b) {
        for (std::size_t p = 0; p < lanes::parts; ++p)
            a.part[p] /= b.part[p];
        return a;
    }
    [[gnu::always_inline]] friend Lanes operator-(Lanes a) {
        for (lanes::Pair& pair : a.part)
            pair = -pair;
        return a;
    }
    [[gnu::always_inline]] friend LaneMask operator<(const Lanes& a, const Lanes& b) {
        LaneMask mask;
        for (std::size_t p = 0; p < lanes::parts; ++p)
            mask.part[p] = a.part[p] < b.part[p];
        return mask;
    }
    [[gnu::always_inline]] friend LaneMask operator>(const Lanes& a, const Lanes& b) { return b < a; }
    [[gnu::always_inline]] friend LaneMask operator<=(const Lanes& a, const Lanes& b) {
        LaneMask mask;
        for (std::size_t p = 0; p < lanes::parts; ++p)
            mask.part[p] = a.part[p] <= b.part[p];
        return mask;
    }
    [[gnu::always_inline]] friend LaneMask operator>=(const Lanes& a, const Lanes& b) { return b <= a; }
    [[gnu::always_inline]] friend LaneMask operator==(const Lanes& a, const Lanes& b) {
        LaneMask mask;
        for (std::size_t p = 0; p < lanes::parts; ++p)
            mask.part[p] = a.part[p] == b.part[p];
        return mask;
    }
};

inline bool all(bool answer) {
    return answer;
}
inline bool all(const LaneMask& answers) {
    return answers.all();
}

template<class T>
concept Number = std::same_as<T, double> || std::same_as<T, Lanes>;

/// Answer to a comparison.
template<Number N>
using MaskOf = decltype(N{} < N{});

inline double choose(bool mask, double yes, double no) {
    return mask ? yes : no;
}
[[gnu::always_inline]] inline Lanes choose(const LaneMask& mask, const Lanes& yes, const Lanes& no) {
    Lanes result;
    for (std::size_t p = 0; p < lanes::parts; ++p)
        result.part[p] = mask.part[p] ? yes.part[p] : no.part[p];
    return result;
}

/// As std::min and std::max: the first of two that do not differ, or of which one is NaN.
template<Number N>
[[gnu::always_inline]] inline N lesser(const N& a, const N& b) {
    return choose(b < a, b, a);
}
template<Number N>
[[gnu::always_inline]] inline N greater(const N& a, const N& b) {
    return choose(a < b, b, a);
}

inline double absolute(double a) {
    return std::abs(a);
}
inline Lanes absolute(const Lanes& a) {
    return choose(a < Lanes(0.0), -a, a);
}

/// f of every lane, for functions that only doubles have.
template<class Function>
double each(double a, Function f) {
    return f(a);
}
template<class Function>
Lanes each(const Lanes& a, Function f) {
    Lanes result;
    for (std::size_t lane = 0; lane < lane_count; ++lane)
        result.set(lane, f(a[lane]));
    return result;
}

/// The answer of all lanes. Where they differ `alike` becomes false, and what is computed from there on means
/// nothing: the lanes have to be evaluated one by one.
inline bool agree(bool answer, bool& /*alike*/) {
    return answer;
}
inline bool agree(const LaneMask& answers, bool& alike) {
    const bool none = answers.none();
    alike = alike && (none || answers.all());
    return !none;
}

} // namespace routeweigh
