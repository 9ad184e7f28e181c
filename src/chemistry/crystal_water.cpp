// SPDX-License-Identifier: MIT
#include "chemistry/crystal_water.hpp"

#include <charconv>
#include <string_view>

namespace routeweigh {
namespace {

/// Of one part of a formula: 5 for "5H2O", 1 for "H2O", 0 for "CuSO4".
int waters_of(std::string_view part) {
    constexpr std::string_view water = "H2O";
    if (!part.ends_with(water)) return 0;
    part.remove_suffix(water.size());
    int count = 1;
    const auto read = std::from_chars(part.data(), part.data() + part.size(), count);
    return read.ptr == part.data() + part.size() ? count : 0;
}

} // namespace

int crystal_water(const Substance& substance) {
    const std::string_view formula =
        substance.common_formula.empty() ? substance.formula.text : substance.common_formula;
    // The last byte of each sign that joins parts of a formula: full stop, middle dot, dot operator.
    const std::size_t dot = formula.find_last_of(".\xB7\x85");
    return dot == std::string_view::npos ? 0 : waters_of(formula.substr(dot + 1));
}

double anhydrous_molar_mass(const Substance& substance) {
    return substance.molar_mass - crystal_water(substance) * molar_mass_of_water;
}

} // namespace routeweigh
